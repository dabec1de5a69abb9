"""The equations of motion against SciPy's adaptive solver, and the rose of limiting winds against its
root finder, written anew from the published formulas.

usage: THOLE_MOTION_CASES=PROGRAM python3 motion_test.py

Also prints how long an hour takes here and there.
"""

import math
import os
import subprocess
import time
import unittest

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

PROGRAM = os.environ.get("THOLE_MOTION_CASES", "")

# --- the boat: R25, the handbook's 7.6 m centre console ------------------------------------------
RHO_A, RHO_W, G = 1.226, 1026.0, 9.80665
MASS, LENGTH, WATERLINE, BEAM = 2300.0, 7.6, 6.6, 2.3
FRONTAL, LATERAL, LATERAL_X = 4.0, 9.0, 0.3
SIDE, SIDE_X, SIDE_DRAG = 2.8, -0.3, 0.6
SURGE_AREA = 0.1 * 2.3 * 0.45 + 13.8 * 0.0055
BOW_ANGLE, THRUSTER_X = 0.44684, 3.7
HS, TP = 0.279, 2.06

M11 = MASS + 2.7 * RHO_W * (MASS / RHO_W) ** (5 / 3) / WATERLINE**2  # Soeding 1982
M22 = 1.7 * MASS
I66 = 1.6 * MASS * (0.25 * LENGTH) ** 2

STRIPS = 400
STRIP_X = (np.arange(STRIPS) + 0.5) * WATERLINE / STRIPS - WATERLINE / 2
DEPTH = SIDE / WATERLINE * (1 + 12 * SIDE_X * STRIP_X / WATERLINE**2) * WATERLINE / STRIPS
FEW = slice(10, None, 20)  # twenty strips, for the timing


def folded(angle):
    return abs((angle + math.pi) % (2 * math.pi) - math.pi)


def period_factor(ratio):
    return 1.0 if ratio < 1 else ratio**-3 * math.exp(1 - ratio**-3)


TZ = TP / 1.4049
WAVE_SURGE = 0.5 * RHO_W * G * HS**2 * period_factor(TZ / (0.9 * WATERLINE**0.33))
WAVE_SWAY = 0.5 * RHO_W * G * HS**2 * period_factor(TZ / (0.75 * BEAM**0.5))


def loads(heading, u, v, r, wind_x, wind_y, push, x_speed, y_speed, strips=slice(None)):
    """Surge, sway and yaw of wind, waves and water; heading counter-clockwise off the wind."""
    cosine, sine = math.cos(heading), math.sin(heading)
    ahead = cosine * (wind_x - x_speed) + sine * (wind_y - y_speed)
    port = cosine * (wind_y - y_speed) - sine * (wind_x - x_speed)
    pressure = 0.5 * RHO_A * (ahead**2 + port**2)
    d = math.atan2(port, -ahead)  # where it comes from, clockwise from the bow
    # DNV-ST-0111 [3.5]
    surge = -0.7 * pressure * FRONTAL * math.cos(d)
    sway = 0.9 * pressure * LATERAL * math.sin(d)
    yaw = sway * (LATERAL_X + 0.3 * (1 - 2 * folded(d) / math.pi) * WATERLINE)
    # [3.7]
    fold = folded(heading)
    bow = 0.8 * BOW_ANGLE**0.45
    stern = 0.7 * 0.95**2
    h1 = bow + fold / math.pi * (stern - bow)
    h2 = 0.05 + 0.95 * math.atan(1.45 * (fold - 1.75))
    surge += push * WAVE_SURGE * BEAM * 0.09 * h1 * h2
    wave_sway = push * WAVE_SWAY * WATERLINE * 0.09 * sine
    sway += wave_sway
    yaw += wave_sway * (0.05 - 0.14 * fold / math.pi) * WATERLINE
    # Water: strips (Fossen 2021), and the linear part.
    x = STRIP_X[strips]
    flow = v + x * r
    drag = 0.5 * RHO_W * SIDE_DRAG * np.abs(flow) * flow * DEPTH[strips] * (STRIPS / len(x))
    surge += -0.5 * RHO_W * SURGE_AREA * abs(u) * u - M11 / 60 * u
    sway += -drag.sum() - M22 / 40 * v
    yaw += -(x * drag).sum() - I66 / 15 * r
    return surge, sway, yaw


CURRENT_X, CURRENT_Y = -0.5 * math.cos(math.pi / 3), 0.5 * math.sin(math.pi / 3)


def acting_at(t):
    """Wind on the water and push of the waves, as motion_cases.cpp has them."""
    along = 7.7 + 1.2 * math.cos(0.11 * t) + 0.8 * math.cos(0.53 * t + 1.0)
    return -along, 0.9 * math.cos(0.23 * t + 0.4), 1.0 + 0.6 * math.cos(0.4 * t)


def rates(t, state, thrust_ahead, thrust_port, acting=acting_at, strips=slice(None)):
    _, _, heading, u, v, r = state[:6]
    cosine, sine = math.cos(heading), math.sin(heading)
    x_speed = cosine * u - sine * v + CURRENT_X
    y_speed = sine * u + cosine * v + CURRENT_Y
    wind_x, wind_y, push = acting(t)
    surge, sway, yaw = loads(heading, u, v, r, wind_x, wind_y, push, x_speed, y_speed, strips)
    surge += thrust_ahead
    sway += thrust_port
    yaw += THRUSTER_X * thrust_port
    return [x_speed, y_speed, r, (surge + M22 * v * r) / M11, (sway - M11 * u * r) / M22,
            (yaw - (M22 - M11) * u * v) / I66]


def rest(x, y, heading):
    return [x, y, heading, 0.0, 0.0, 0.0]


def ours(case):
    text = subprocess.run([PROGRAM, case], check=True, capture_output=True, text=True).stdout
    return np.array([[float(word) for word in line.split()] for line in text.splitlines()])


class Motion(unittest.TestCase):
    def compare(self, mine, theirs):
        """Within 1e-4 of the largest value that each of place, heading and speeds takes."""
        scale = np.abs(theirs).max(axis=0)
        worst = (np.abs(mine - theirs) / scale).max(axis=0)
        print(f"\n  largest difference over largest value: {worst.max():.2g}")
        self.assertLess(worst.max(), 1e-4)

    def test_ten_minutes_under_a_wandering_pull(self):
        mine = ours("open")
        run = solve_ivp(
            lambda t, y: rates(t, y, 150 + 40 * math.cos(0.05 * t), 30 * math.sin(0.07 * t)),
            (0.0, 600.0), rest(0.0, 0.0, 0.3), method="DOP853", t_eval=mine[:, 0], rtol=1e-9,
            atol=1e-9)
        self.compare(mine[:, 1:], run.y.T)

    def test_a_minute_of_sampled_control(self):
        mine = ours("sampled")
        state, theirs = rest(-8.0, 3.0, 0.3), []
        for i in range(1201):
            if i % 20 == 0:
                theirs.append(list(state))
            x, y, heading, u, v, r = state
            cosine, sine = math.cos(heading), math.sin(heading)
            bow_x, bow_y = x + THRUSTER_X * cosine, y + THRUSTER_X * sine
            ahead = -57.0 * (cosine * bow_x + sine * bow_y) - 600.0 * u
            port = -17.5 * (cosine * bow_y - sine * bow_x) - 190.0 * (v + THRUSTER_X * r)
            share = min(1.0, 250.0 / max(1e-9, math.hypot(ahead, port)))
            step = solve_ivp(rates, (0.05 * i, 0.05 * (i + 1)), state, method="DOP853", rtol=1e-8,
                             atol=1e-10, args=(share * ahead, share * port))
            state = step.y[:, -1]
        self.compare(mine[:, 1:], np.array(theirs))

    def test_how_long_an_hour_takes(self):
        native_ms = float(subprocess.run([PROGRAM, "time"], check=True, capture_output=True,
                                         text=True).stdout)
        sampled_s, free_s = time_sampled(), time_free()
        print(f"\n  an hour at 20 Hz: native {native_ms:.1f} ms of 60 ms; SciPy {sampled_s:.0f} s with"
              f" the law sampled as it is ({1e3 * sampled_s / native_ms:.0f} times as long), "
              f"{free_s:.1f} s with a law without samples, noise and limits"
              f" ({1e3 * free_s / native_ms:.0f} times)")
        self.assertGreater(1e3 * sampled_s / native_ms, 50.0)


class Rose(unittest.TestCase):
    def test_limiting_wind_from_every_side(self):
        native = ours("rose")[:, 0]
        began = time.process_time()
        theirs = np.array([limiting_wind(math.radians(5 * i)) for i in range(72)])
        took_ms = 1e3 * (time.process_time() - began)
        native_ms = float(subprocess.run([PROGRAM, "rose_time"], check=True, capture_output=True,
                                         text=True).stdout)
        print(f"\n  limiting winds of {theirs.min():.2f} to {theirs.max():.2f} m/s, largest difference "
              f"{np.abs(native - theirs).max():.3f} m/s; 72 angles: native {native_ms:.2f} ms, SciPy "
              f"{took_ms:.0f} ms ({took_ms / native_ms:.0f} times)")
        self.assertLess(np.abs(native - theirs).max(), 0.05)
        self.assertGreater(np.ptp(theirs), 0.2)  # the side it comes from does matter
        self.assertGreater(took_ms / native_ms, 50.0)


# --- the same rose in SciPy ----------------------------------------------------------------------
ALLOWED, KNOT, FETCH = 220.0, 0.51444, 5000.0
HEADINGS = np.radians(np.arange(-179, 180, 2))


def sea(wind):
    """JONSWAP growth, Hasselmann et al. 1973."""
    fetch = G * FETCH / wind**2
    return 4 * math.sqrt(1.6e-7 * fetch) * wind**2 / G, wind / G * fetch**0.33 / 3.5


def bow_loads(heading, wind, angle):
    """Surge, sway to port and yaw at rest, DNV-ST-0111 [3.5] to [3.7]; heading clockwise off the wind."""
    def fold(a):
        return np.abs((a + math.pi) % (2 * math.pi) - math.pi)

    d, pressure = -heading, 0.5 * RHO_A * wind**2
    surge = -0.7 * pressure * FRONTAL * np.cos(d)
    sway = 0.9 * pressure * LATERAL * np.sin(d)
    yaw = sway * (LATERAL_X + 0.3 * (1 - 2 * fold(d) / math.pi) * WATERLINE)
    c, pressure = angle - heading, 0.5 * RHO_W * KNOT**2
    side = SIDE_DRAG * pressure * SIDE * np.sin(c)
    surge = surge - pressure * SURGE_AREA * np.cos(c)
    sway = sway + side
    yaw = yaw + side * (SIDE_X + np.clip(0.4 * (1 - 2 * fold(c) / math.pi), -0.2, 0.25) * WATERLINE)
    height, period = sea(wind)
    push = 0.5 * RHO_W * G * height**2 * 0.09
    bow, stern = 0.8 * BOW_ANGLE**0.45, 0.7 * 0.95**2
    h1 = bow + fold(d) / math.pi * (stern - bow)
    h2 = 0.05 + 0.95 * np.arctan(1.45 * (fold(d) - 1.75))
    tz = period / 1.4049
    surge = surge + push * period_factor(tz / (0.9 * WATERLINE**0.33)) * BEAM * h1 * h2
    side = push * period_factor(tz / (0.75 * BEAM**0.5)) * WATERLINE * np.sin(d)
    return surge, sway + side, yaw + side * (0.05 - 0.14 * fold(d) / math.pi) * WATERLINE


def worst_pull(wind, angle):
    """The most thrust of all headings that it comes back to."""
    def moment(heading):
        _, sway, yaw = bow_loads(heading, wind, angle)
        return yaw - THRUSTER_X * sway

    at = moment(HEADINGS)
    most = 0.0
    for i in np.nonzero((at < 0) & (np.roll(at, -1) > 0))[0]:
        root = brentq(moment, HEADINGS[i], HEADINGS[i] + math.radians(2), xtol=1e-9)
        surge, sway, _ = bow_loads(root, wind, angle)
        most = max(most, math.hypot(surge, sway))
    return most


def limiting_wind(angle):
    low = 0.0
    while worst_pull(low + 2, angle) <= ALLOWED:
        low += 2
    return brentq(lambda wind: worst_pull(wind, angle) - ALLOWED, max(low, 0.01), low + 2, xtol=0.01)


# --- the same hour in SciPy -----------------------------------------------------------------------
TONES = 240


def gusty(seed):
    """Wind and waves as sums of as many tones as the product takes."""
    chance = np.random.default_rng(seed)
    frequency = np.exp(chance.uniform(math.log(1 / 1200), math.log(0.5), (2, TONES)))
    wave = chance.uniform(-0.2, 0.7, 100)
    phase, wave_phase = chance.uniform(0, 2 * math.pi, (2, TONES)), chance.uniform(0, 6.28, 100)
    turn, wave_turn = 2 * math.pi * frequency, 2 * math.pi * wave

    def acting(t):
        along, across = np.cos(turn * t + phase).sum(axis=1) * 0.7 * math.sqrt(2 / TONES)
        at = wave_turn * t + wave_phase
        return -7.7 - along, 0.8 * across, (np.cos(at).sum()**2 + np.sin(at).sum()**2) / 100

    return acting


def pull(state):
    x, y, heading, u, v, r = state[:6]
    cosine, sine = math.cos(heading), math.sin(heading)
    bow_x, bow_y = x + THRUSTER_X * cosine, y + THRUSTER_X * sine
    ahead = -57.0 * (cosine * bow_x + sine * bow_y) - 600.0 * u + 150.0
    port = -17.5 * (cosine * bow_y - sine * bow_x) - 190.0 * (v + THRUSTER_X * r)
    return ahead, port


def time_sampled():
    """Seconds for an hour in which the solver stops at each twentieth of a second for a new pull."""
    acting, state, seconds = gusty(1), rest(0.0, 0.0, 0.0), 15.0
    began = time.process_time()
    for i in range(int(seconds * 20)):
        step = solve_ivp(rates, (0.05 * i, 0.05 * (i + 1)), state, method="RK45",
                         args=(*pull(state), acting, FEW))
        state = step.y[:, -1]
    return (time.process_time() - began) * 3600.0 / seconds


def time_free():
    """Seconds for an hour in which nothing is sampled, and the solver steps as it likes (1e-6)."""
    acting, seconds = gusty(1), 300.0

    def closed(t, state):
        return rates(t, state, *pull(state), acting, FEW)

    began = time.process_time()
    solve_ivp(closed, (0.0, seconds), rest(-THRUSTER_X, 0.0, 0.0), method="RK45", rtol=1e-6,
              atol=1e-6)
    return (time.process_time() - began) * 3600.0 / seconds


if __name__ == "__main__":
    unittest.main()
