#include "calc/design.h"
#include "calc/plate_made.h"
#include "calc/typed_feeder.h"

namespace thole {

Design evaluate(const Job& job, const Catalogue& catalogue) {
  Evaluation evaluation(job, catalogue, {}, Telling::every_step, {.typed_circuit = take_typed_circuit, .plate = take_made_plate});
  while (evaluation.step()) {
  }
  return evaluation.design();
}

}  // namespace thole
