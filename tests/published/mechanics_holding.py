"""Rows of holding, run-out and acceptance (modules C and D)."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any

from tommybar.mechanics import gripped_ring, holding
from tommybar.sizes import acceptance, position, runout

Given = Mapping[str, Any]
Found = dict[str, float]


def chuck_speed(g: Given) -> Found:
    """C1."""
    lost, needed = holding.grip_at_rest(g["Fspz_N"], g["sumMc_kgm"], g["n_rpm"], g["Sz"], g["Ssp"])
    spare = g["Fsp0_have_N"] / g["Ssp"] - g["Sz"] * g["Fspz_N"]
    return {
        "Fc_N": lost,
        "Fsp0_req_N": needed,
        "n_perm_rpm": 30 / math.pi * math.sqrt(spare / g["sumMc_kgm"]),
    }


def grip(g: Given) -> Found:
    """C2 and C3."""
    slip = holding.grip_against_slip(g["Fc_N"], g["Ff_N"], g["d_mm"], g["dsp_mm"], g["mu"], g["S"])
    push = math.hypot(g["Fc_N"], g["Fp_N"])
    tilt = holding.grip_against_tilt(push, g["L_mm"], g["dsp_mm"], g["mu"], g["S"])
    return {"F_slip_N": slip, "F_tilt_N": tilt, "F_total_N": slip + tilt}


def liftoff(g: Given) -> Found:
    """C4, onset."""
    return {"M_Nm": holding.tilt_moment(g["Fsp_N"], g["lg_mm"], 10.0, 0.1)[0]}


def tilt(g: Given) -> Found:
    """C4."""
    onset, limit = holding.tilt_moment(g["Fsp_N"], g["lg_mm"], g["dsp_mm"], g["mu"])
    return {"M_onset_Nm": onset, "M_ult_Nm": limit}


def _ring(g: Given) -> gripped_ring.RingUnderJaws:
    return gripped_ring.ring_under_jaws(
        g["n"], g["Wtot_N"], g["Do_mm"], g["Di_mm"], g["width_mm"], 1000 * g["E_GPa"]
    )


def ring(g: Given) -> Found:
    """C6."""
    found = _ring(g)
    return {
        "M_load_Nm": found.moment_at_jaw,
        "M_mid_Nm": found.moment_between,
        "d_load_um": 1000 * found.in_at_jaw,
        "d_mid_um": 1000 * found.out_between,
        "pv_um": 1000 * found.out_of_round,
        "sig_b_MPa": found.bending_stress,
    }


def ringwrap(g: Given) -> Found:
    """C7."""
    factor = gripped_ring.wrap_factor(g["n"], g["wrap_deg"], g["Do_mm"], g["Di_mm"])
    return {"pv_um": 1000 * _ring(g).out_of_round * factor}


def two(g: Given) -> Found:
    """D2."""
    pair = (g["e1_um"], g["e2_um"])
    stack = runout.runout_stack(pair, g["p"])
    return {
        "rss_um": stack.rms_um,
        "e50_um": runout.eccentricity_quantile(pair, 0.5),
        "ep_um": stack.quantile_um,
        "worst_um": stack.worst_um,
    }


def stack(g: Given) -> Found:
    """D1 and D3."""
    found = runout.runout_stack(g["e_um"], g["p"])
    return {
        "rms_um": found.rms_um,
        "p_rayleigh_um": found.rms_um * math.sqrt(-math.log(1 - g["p"])),
        "p_exact_um": found.quantile_um,
        "worst_um": found.worst_um,
        "TIRp_um": found.runout_um,
    }


def rice(g: Given) -> Found:
    """D4."""
    at = runout.offset_eccentricity(g["nu_um"], g["sigma_um"], g["p"])
    half = runout.offset_eccentricity(g["nu_um"], g["sigma_um"], 0.5)
    return {"e50_um": half, "ep_um": at, "TIRp_um": 2 * at}


def holes(g: Given) -> Found:
    """D5."""
    sigma = position.axis_deviation(
        g["dro_res_um"], g["backlash_half_um"], g["leadscrew_sd_um"], g["wander_sd_um"]
    )
    return {
        "sigma_um": sigma,
        "T_one_um": position.true_position(sigma, g["p"]),
        "T_allN_um": position.true_position(sigma, g["p"], g["N"]),
    }


def pattern(g: Given) -> Found:
    """D6."""
    return {
        "T_to_datum_um": position.true_position_to_datum(
            g["sigma_hole_um"], g["sigma_shift_um"], g["p"], g["N"]
        ),
        "T_hole_to_hole_um": position.true_position(g["sigma_hole_um"], g["p"], g["N"]),
    }


def polar(g: Given) -> Found:
    """D7."""
    sideways = g["R_mm"] * 1000 * math.radians(g["sigma_ang_arcmin"] / 60)
    return {
        "sigma_t_um": sideways,
        "T_um": position.true_position_polar(g["R_mm"], g["sigma_ang_arcmin"], g["sigma_rad_um"], g["p"]),
    }


def decide(g: Given) -> Found:
    """D8 and D9."""
    low, high, u = g["LSL_mm"], g["USL_mm"], g["u_mm"]
    zone = acceptance.acceptance_zone(low, high, u, g["P"])
    return {
        "guard_mm": zone.guard_mm,
        "acc_lo_mm": zone.smallest,
        "acc_hi_mm": zone.largest,
        "p_conform": acceptance.conformance_probability(g["y_mm"], low, high, u),
        "U_over_T": acceptance.instrument_verdict(high - low, u).ratio,
    }


RULES: dict[str, Callable[[Given], Found]] = {
    "C.speed": chuck_speed,
    "C.grip": grip,
    "C.liftoff": liftoff,
    "C.tilt": tilt,
    "C.ring": ring,
    "C.ringwrap": ringwrap,
    "D.two": two,
    "D.stack": stack,
    "D.rice": rice,
    "D.holes": holes,
    "D.pattern": pattern,
    "D.polar": polar,
    "D.decide": decide,
}
