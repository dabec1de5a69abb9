#pragma once

// What a meter's millivolts across one piece of the feeder say of it, under a steady load.

namespace thole {

struct JointReading {
  double drop_V = 0.0;     // post to post
  double current_A = 0.0;  // while reading; > 0
  double model_ohm = 0.0;  // what the piece should have
  double rated_A = 0.0;    // full thrust
};

struct JointVerdict {
  double resistance_ohm = 0.0;
  double excess_ohm = 0.0;    // over the model; negative: less
  double heat_W = 0.0;        // of the excess, while reading
  double heat_rated_W = 0.0;  // ... at full thrust
  bool suspect = false;  // above twice its model and 0.2 milliohm, or 5 W of excess at full thrust
};

// R = V / I, x = R - R_model. Source: kCommonPractice.
JointVerdict judge_joint(const JointReading& reading);

struct WholeReading {
  double bank_V = 0.0;   // at the bank's posts
  double motor_V = 0.0;  // at the plug
  double current_A = 0.0;
  double model_ohm = 0.0;
  double meter_V = 0.01;     // uncertainty of each voltage
  double clamp_frac = 0.02;  // uncertainty of the current, of itself
};

struct WholeExcess {
  double excess_ohm = 0.0;
  double uncertainty_ohm = 0.0;  // root of the sum of squares
};

// All excess together, where only both ends can be measured.
WholeExcess whole_excess(const WholeReading& reading);

}  // namespace thole
