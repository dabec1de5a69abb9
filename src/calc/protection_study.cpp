#include "calc/protection_study.h"

namespace thole {

ProtectionStudy protection_study(const Design& design) {
  return {protection_input(design), design.protection};
}

}  // namespace thole
