#pragma once

#include <doctest/doctest.h>

// Relative tolerance at every size (doctest's own adds an absolute part); `expected` must not be 0.
inline doctest::Approx rel(double expected, double rel_tol) {
  return doctest::Approx(expected).epsilon(rel_tol).scale(0.0);
}

// Absolute tolerance in the unit of the value, for figures printed to a number of decimals.
inline bool near(double actual, double expected, double tolerance) {
  return actual >= expected - tolerance && actual <= expected + tolerance;
}
