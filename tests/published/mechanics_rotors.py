"""Rows of rotors, fits and threads (modules E, F and G)."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any

from tommybar.facts.threads import thread as thread_of
from tommybar.mechanics import balancing, critical_speed, press_fit, rotors, thread_strength, unbalance
from tommybar.shapes.moments import Moments, ring_of_revolution, rod
from tommybar.sizes import temperature

Given = Mapping[str, Any]
Found = dict[str, float]


def polyrev(g: Given) -> Found:
    """E, polygon of revolution; holes are (count, pitch radius, diameter, from, to)."""
    body = ring_of_revolution([(z, r) for r, z in g["P_mm"]])
    for count, out, dia, low, high in g.get("holes", ()):
        for n in range(int(count)):
            body -= rod(dia, low, high).shifted(dx=out).turned(360 * n / count)
    return _mass(body, g["rho"] * 1e-6)


def _mass(body: Moments, grams: float) -> Found:
    centre = body.z / body.volume
    across = (body.xx + body.yy) / 2 + body.zz - body.volume * centre**2
    return {
        "V_mm3": body.volume,
        "mass_g": body.volume * grams,
        "zc_mm": centre,
        "Ip_gmm2": (body.xx + body.yy) * grams,
        "It_gmm2": across * grams,
    }


def _field(g: Given, at: float) -> rotors.DiscStress:
    return rotors.disc_stress(
        at, g["a_mm"], g["b_mm"], g["n_rpm"], g["rho"] / 1000, g["nu"], 1000 * g.get("E_GPa", 100.0)
    )


def disc(g: Given) -> Found:
    """E1."""
    a, b = g["a_mm"], g["b_mm"]
    rim = 1000 * _field(g, b).growth
    if a == 0:
        return {"sig_max_MPa": _field(g, 0.0).hoop, "u_rim_um": rim}
    return {
        "sig_t_bore_MPa": _field(g, a).hoop,
        "sig_r_max_MPa": _field(g, math.sqrt(a * b)).radial,
        "u_bore_um": 1000 * _field(g, a).growth,
        "u_rim_um": rim,
    }


def hole(g: Given) -> Found:
    """E3."""
    field = _field(g, g["rh_mm"])
    return {
        "sig_r_MPa": field.radial,
        "sig_t_MPa": field.hoop,
        "sig_hole_MPa": rotors.stress_at_hole(field),
    }


def burst(g: Given) -> Found:
    """E4 and E5."""
    a, b, grams = g["a_mm"], g["b_mm"], g["rho"] * 1e-6
    body = ring_of_revolution([(0, a), (g["t_mm"], a), (g["t_mm"], b), (0, b)])
    flies = rotors.fragment_speed(a, b, g["n_rpm"])
    return {
        "sig_avg_MPa": rotors.average_hoop_stress(a, b, g["n_rpm"], g["rho"] / 1000),
        "n_burst_rpm": rotors.bursting_speed(a, b, g["rho"] / 1000, g["Rm_MPa"], g["factor"]),
        "E_J": rotors.rotation_energy((body.xx + body.yy) * grams, g["n_rpm"]),
        "E_trans3_J": body.volume * grams / 1000 * flies**2 / 2,
        "v_frag_m_s": flies,
    }


def grade(g: Given) -> Found:
    """E6."""
    allowed = unbalance.permissible_unbalance(g["G_mm_s"], g["m_kg"], g["n_rpm"])
    return {
        "e_per_um": unbalance.permissible_eccentricity(g["G_mm_s"], g["n_rpm"]),
        "U_per_gmm": allowed,
        "U_A_gmm": allowed * g["LB_mm"] / g["L_mm"],
        "U_B_gmm": allowed * (1 - g["LB_mm"] / g["L_mm"]),
    }


def askew(g: Given) -> Found:
    """E7."""
    omega = g["n_rpm"] * math.pi / 30
    off = rotors.unbalance_of_runout(g["m_g"], g["TIR_mm"])
    couple = balancing.skew_couple(g["Ip_gmm2"], g["It_gmm2"], g["faceTIR_mm"], g["face_dia_mm"])
    return {
        "U_gmm": off,
        "C_gmm2": couple,
        "F_N": off * 1e-6 * omega**2,
        "M_Nm": couple * 1e-9 * omega**2,
        "G_mm_s": off / g["m_g"] * omega,
    }


def drillface(g: Given) -> Found:
    """E8."""
    depth = balancing.face_hole_depth(g["U_gmm"], g["r_mm"], g["d_mm"], g["rho"] / 1000, g["tip_deg"])
    return {"mass_g": g["U_gmm"] / g["r_mm"], "depth_full_mm": depth}


def drillrim(g: Given) -> Found:
    """E8."""
    depth = balancing.rim_hole_depth(g["U_gmm"], g["R_mm"], g["d_mm"], g["rho"] / 1000)
    return {"depth_mm": depth, "mass_g": g["rho"] * 1e-6 * math.pi * g["d_mm"] ** 2 / 4 * depth}


def three_runs(g: Given) -> Found:
    """E9."""
    found = balancing.three_run_unbalance(g["V0"], (g["V1"], g["V2"], g["V3"]), g["Ut_gmm"])
    return {
        "U_gmm": found.unbalance,
        "angle_heavy_deg": found.heavy_at,
        "angle_add_deg": found.add_at,
    }


def crit(g: Given) -> Found:
    """E11."""
    shaft = (g["mode"], g["L_mm"], g["a_mm"], g["d_mm"], 1000 * g["E_GPa"])
    grams = 1000 * g["m_disc_kg"]
    return {
        "k_N_per_um": critical_speed.shaft_stiffness(*shaft) / 1000,
        "n_massless_rpm": critical_speed.critical_speed(*shaft, grams),
        "n_crit_rpm": critical_speed.critical_speed(*shaft, grams, g["rho"] / 1000),
    }


def thread(g: Given) -> Found:
    """G1."""
    size = thread_of(f"M{g['d_mm']:g}x{g['P_mm']:g}")
    return {
        "d2_mm": size.pitch_diameter,
        "D1_mm": size.minor,
        "d3_mm": size.core,
        "As_mm2": size.stress_area,
        "proof_N": size.stress_area * g["Sp_MPa"],
    }


def press(g: Given) -> Found:
    """F1."""
    fit = press_fit.press_fit(
        g["d_mm"],
        g["delta_um"] / 1000,
        g["L_mm"],
        g["Do_mm"],
        1000 * g["Eo_GPa"],
        g["no"],
        1000 * g["Ei_GPa"],
        g["ni"],
        g["di_mm"],
        g["mu"],
    )
    return {
        "p_MPa": fit.pressure,
        "F_N": fit.force,
        "T_Nm": fit.torque,
        "sig_t_hub_MPa": fit.hub_hoop,
        "sig_vM_hub_MPa": fit.hub_mises,
    }


def shrink(g: Given) -> Found:
    """F3."""
    return {
        "dT_K": press_fit.shrink_temperature(
            g["d_mm"], g["delta_um"] / 1000, g["clear_um"] / 1000, g["alpha_1e6"]
        )
    }


def thermal(g: Given) -> Found:
    """F5."""
    one, other = (
        temperature.thermal_growth(g["L_mm"], g[key], g["dT_K"]) for key in ("alpha1_1e6", "alpha2_1e6")
    )
    return {"dL1_um": one, "rel_um": one - other}


def strip(g: Given) -> Found:
    """G2."""
    nut, screw = thread_strength.shear_areas(g["d_mm"], g["P_mm"], g["Le_mm"])
    load = thread_strength.strip_load(
        g["d_mm"], g["P_mm"], g["Le_mm"], g["Rm_screw_MPa"], g["Rm_nut_MPa"], g["kappa"]
    )
    return {
        "ASn_mm2": nut,
        "ASs_mm2": screw,
        "F_strip_nut_N": load.nut,
        "F_break_N": load.breaks,
        "Le_min_mm": load.engagement_needed,
    }


def torque(g: Given) -> Found:
    """G3."""
    pull = thread_strength.pull_at_yield(g["d_mm"], g["P_mm"], g["muG"], g["Rp_MPa"], g["nu"])
    turn = thread_strength.tightening_torque(pull, g["d_mm"], g["P_mm"], g["muG"], g["muK"], g["DKm_mm"])
    return {"F_M_N": pull, "M_A_Nm": turn, "K": turn * 1000 / pull / g["d_mm"]}


def tap(g: Given) -> Found:
    """G4."""
    turn = thread_strength.tapping_torque(g["d_mm"], g["P_mm"], g["kc_MPa"])
    breaks = thread_strength.tap_breaking_torque(g["d_mm"], g["core_ratio"], g["tau_MPa"])
    return {"M_Nm": turn, "M_break_Nm": breaks, "margin": breaks / turn}


RULES: dict[str, Callable[[Given], Found]] = {
    "E.polyrev": polyrev,
    "E.disc": disc,
    "E.hole": hole,
    "E.burst": burst,
    "E.grade": grade,
    "E.runout": askew,
    "E.drillface": drillface,
    "E.drillrim": drillrim,
    "E.3run": three_runs,
    "E.crit": crit,
    "G.thread": thread,
    "F.press": press,
    "F.shrink": shrink,
    "F.thermal": thermal,
    "G.strip": strip,
    "G.torque": torque,
    "G.tap": tap,
}
