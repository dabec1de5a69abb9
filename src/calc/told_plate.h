#pragma once

// What a job says of its plate: outline, cut-outs and where bolts stand; before any stock is chosen.

#include "calc/mount/mount.h"
#include "calc/plate/shape.h"
#include "job/job.h"

namespace thole {

// Without thickness, holes without diameter. Precondition: length, width and bolts of the job are known.
PlateShape told_shape(const Mount& job);

// Whether the job gives places, one by one, that its rows do not.
bool bolts_are_placed(const Mount& job);

// Fills what the shape decides: length and width of a measured outline, places of bolts, their nearest edge.
void take_shape(const Mount& job, MountInput& in);

// Of the plate ahead of x, forward of its aft edge: by 50 x 50 places.
double area_ahead_m2(const Mount& job, double x_m);

}  // namespace thole
