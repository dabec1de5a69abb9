#include "draw/drawing.h"

#include <cmath>

#include "base/units.h"

namespace thole {

double moved_value(const Handle& handle, double value, double dx, double dy) {
  if (!handle.turns) return value + handle.dx_factor * dx + handle.dy_factor * dy;
  const auto angle_deg = [&](Point point) {
    return deg_from_rad(std::atan2(point.x - handle.pivot.x, point.y - handle.pivot.y));
  };
  const double turned_deg = angle_deg({handle.at.x + dx, handle.at.y + dy}) - angle_deg(handle.at);
  return std::abs(std::remainder(value + turned_deg, 360.0));
}

}  // namespace thole
