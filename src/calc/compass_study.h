#pragma once

// The boat's own feeder and heading sensor: from the job to the compass, what the earth's field is
// there, and what could be changed when the heading errs too much.

#include <vector>

#include "calc/compass/compass.h"
#include "calc/design.h"

namespace thole {

// Level part of the earth's field where the boat lies.
struct EarthHere {
  double horizontal_T = 0.0;
  double declination_deg = 0.0;
  bool assumed = true;        // no place was given: a middle latitude's
  bool year_outside = false;  // of the model: taken at its nearest year
  SourceRef source{};
};

// By the model where latitude and longitude are given, else kMiddleLatitudes_T. Precondition: a
// full job.
EarthHere earth_here(const Control& control);

// From the bank up to the feeder's way, along it, and across to the motor. The job's places are to
// starboard, the compass's to port.
std::vector<Place> feeder_route(const Job& job);

// The current at full thrust; the pair as the job lays it. Of a full job.
CompassInput compass_input(const Job& job, double current_A, const EarthHere& earth);

// Distance from the sensor to the middle of the pair.
double sensor_gap_m(const CompassInput& in);

// The least height of the sensor, in whole centimetres above its own, that is so far from the feeder.
double height_off_feeder_m(CompassInput in, double gap_m);

// Single changes of the job, each of which brings the error under its limit: touching cables, a
// twist, the nearest place beside or above. Empty when it is under it, or none does.
std::vector<Change> heading_changes(const Job& job, const CompassInput& in);

struct CompassStudy {
  EarthHere earth{};
  CompassInput input{};
  CompassResult result{};
  double gap_m = 0.0;
  double boat_length_m = 0.0;
};

CompassStudy compass_study(const Design& design);

}  // namespace thole
