#pragma once

// The job on paper: what the installer quotes from, builds from, and leaves aboard.

#include <string>

#include "calc/design.h"
#include "io/measure.h"

namespace thole {

struct SheetOptions {
  System system = System::metric;
  std::string address{};  // the whole link, printed as text and as QR code; empty: neither
  std::string date{};     // shown as it is; empty: a line to write on
};

// A page of HTML that needs nothing else: style and drawings are inside, and there is no script and
// no reference to another file. Made for A4 and Letter, and readable on a phone. Everything is in
// <main class="sheet">, and every rule of its <style> says so: a page may take over the two.
std::string job_sheet_html(const Design& design, const Catalogue& catalogue,
                           const SheetOptions& options);

}  // namespace thole
