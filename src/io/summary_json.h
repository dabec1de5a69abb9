#pragma once

// A design in few words, for a page that shows the wizard in a frame: its own elements can say how
// the job stands, and its enquiry form is handed what a quote is made from.

#include <string>

#include "calc/design.h"
#include "io/measure.h"
#include "job/catalogue.h"

namespace thole {

// Verdict, the check that governs, what was decided (each as a number or text, and as it is said on
// screen), and the price:
//   {"verdict": "fits", "governing": {"id", "label", "text"},
//    "outputs": [{"path", "label", "value", "unit", "text"}], "price", "currency", "edition"}
// A number that does not exist is null; the governing label is empty when no check governs.
std::string write_summary(const Design& design, const Catalogue& catalogue,
                          System system = System::metric);

// What is bought, the hours, and the dangers to be named:
//   {"parts": [{"id", "label", "detail", "quantity", "unit", "price", "lead_days"}],
//    "tasks": [{"id", "label", "labour_h"}], "cautions": ["..."]}
std::string write_quote(const Design& design);

}  // namespace thole
