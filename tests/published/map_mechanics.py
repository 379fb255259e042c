"""Which public functions compute a row of rows/mechanics.csv: one rule for each module named there.

A rule gets the row's inputs, never what the row expects. Units are turned at
this door: the rows speak um, GPa and kg/m3 where the program speaks mm, MPa
and g/cm3.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any

from tommybar.mechanics import (
    chatter,
    cutting,
    deflection,
    drilling,
    drive,
    gripped_ring,
    holding,
    nose_radius,
    press_fit,
    rotors,
    thread_strength,
    unbalance,
)
from tommybar.shapes.moments import Moments, ring_of_revolution, rod
from tommybar.sizes import acceptance, position, runout, temperature

Given = Mapping[str, Any]
Found = dict[str, float]


def speed(g: Given) -> Found:
    """A1."""
    n = cutting.spindle_speed(g["vc_m_min"], g["D_mm"])
    return {
        "n_rpm": n,
        "vf_mm_min": g["f_mm"] * n,
        "t_min": cutting.cutting_minutes(g["L_mm"], g["f_mm"], n),
    }


def kienzle(g: Given) -> Found:
    """A2."""
    h = cutting.chip_thickness(g["f_mm"], g["kappa_deg"])
    force = cutting.cutting_force(g["kc11_MPa"], g["mc"], g["f_mm"], g["ap_mm"], g["kappa_deg"], g["K"])
    power = cutting.cutting_power(force, g["vc_m_min"])
    kc = g["K"] * cutting.specific_cutting_force(g["kc11_MPa"], g["mc"], h)
    return {
        "b_mm": force / kc / h,
        "h_mm": h,
        "kc_MPa": kc,
        "Fc_N": force,
        "Pc_W": power,
        "Pmotor_W": power / g["eta"],
        "M_Nm": cutting.cutting_torque(force, g["D_mm"]),
    }


def nose(g: Given) -> Found:
    """A3."""
    chip = nose_radius.nose_chip(g["r_mm"], g["ap_mm"], g["f_mm"], g["kappa_deg"])
    return {"edge_mm": chip.edge, "area_mm2": chip.area, "heq_mm": chip.thickness}


def split(g: Given) -> Found:
    """A4."""
    found = nose_radius.in_plane_force(g["Fc_N"], g["q"], g["r_mm"], g["ap_mm"], g["f_mm"], g["kappa_deg"])
    return {"kappa_eff": found.angle, "Ff_N": found.along, "Fp_N": found.radial}


def motor(g: Given) -> Found:
    """A5."""
    n = g["n_motor_rpm"] * g["ratio"]
    torque = drive.spindle_torque(g["P_motor_W"], n, g["eta"])
    depth = drive.deepest_cut(torque, g["D_mm"], g["kc11_MPa"], g["mc"], g["f_mm"], g["kappa_deg"])
    return {
        "n_rpm": n,
        "M_Nm": torque,
        "vc_m_min": cutting.surface_speed(n, g["D_mm"]),
        "Fc_max_N": cutting.cutting_force(g["kc11_MPa"], g["mc"], g["f_mm"], depth, g["kappa_deg"]),
        "ap_max_mm": depth,
    }


def _bent(g: Given, at: float) -> float:
    return 1000 * deflection.deflection(
        g["mode"],
        g["F_N"],
        at,
        g["L_mm"],
        g["D_mm"],
        1000 * g["E_GPa"],
        g.get("di_mm", 0.0),
        1000 * g.get("kt_N_per_um", math.inf),
    )


def deflect(g: Given) -> Found:
    """A6."""
    bent = _bent(g, g["a_mm"])
    return {"delta_um": bent, "dia_error_um": 2 * bent}


def taper(g: Given) -> Found:
    """A6 at three places."""
    errors = [2 * _bent(g, x) for x in g["x_mm"]]
    found = {f"dia_err{n}_um": error for n, error in enumerate(errors)}
    found["taper_um_per_100mm"] = 100 * (errors[-1] - errors[0]) / (g["x_mm"][-1] - g["x_mm"][0])
    return found


def spring(g: Given) -> Found:
    """A7."""
    left = [
        1000 * deflection.spring_passes(g["C_um_per_N"] / 1000, g["Kp_N_per_mm"], g["ap_mm"], n)
        for n in (1, 2)
    ]
    return {"delta1_um": left[0], "dia_error1_um": 2 * left[0], "delta2_um": left[1]}


def rough(g: Given) -> Found:
    """A9."""
    height, mean = nose_radius.turned_roughness(g["f_mm"], g["r_mm"])
    return {"Rt_um": height, "Rt_approx_um": mean * 18 * math.sqrt(3) / 8, "Ra_um": mean}


def blim(g: Given) -> Found:
    """A10."""
    return {"blim_mm": chatter.chatter_width(1000 * g["k_N_per_um"], g["zeta"], g["Ks_MPa"])}


def parting(g: Given) -> Found:
    """A11."""
    blade = chatter.blade_stiffness(g["w_mm"], g["H_mm"], g["L_mm"], 1000 * g["E_GPa"]) / 1000
    total = 1 / (1 / blade + 1 / g["kpost_N_per_um"])
    force = cutting.cutting_force(g["kc11_MPa"], g["mc"], g["f_mm"], g["w_mm"])
    ks = cutting.specific_cutting_force(g["kc11_MPa"], g["mc"], g["f_mm"])
    limit = chatter.chatter_width(1000 * total, g["zeta"], ks)
    return {
        "k_blade_N_per_um": blade,
        "k_tot_N_per_um": total,
        "Fc_N": force,
        "dip_um": force / total,
        "blim_mm": limit,
        "w_over_blim": g["w_mm"] / limit,
    }


def drillmh(g: Given) -> Found:
    """B1; the factors A, B and J say which point it is."""
    point = next(name for name, factors in drilling.CHISEL.items() if factors == (g["A"], g["B"], g["J"]))
    thrust, torque = drilling.drill_thrust_and_torque(
        g["Kd"],
        g["D_mm"],
        g["f_mm"],
        point,
        g["W"],  # type: ignore[arg-type]
    )
    power = torque * g["n_rpm"] * math.pi / 30
    return {"T_N": thrust, "M_Nm": torque, "Pc_W": power, "Pmotor_W": power / g["E_eff"]}


def drillcat(g: Given) -> Found:
    """B2."""
    thrust, torque = drilling.drill_thrust_and_torque_by_maker(g["K"], g["D_mm"], g["f_mm"])
    return {"T_N": thrust, "M_Nm": torque}


def drillkz(g: Given) -> Found:
    """B3."""
    h = g["f_mm"] / 2 * math.sin(math.radians(g["sigma_deg"] / 2))
    return {
        "h_mm": h,
        "kc_MPa": cutting.specific_cutting_force(g["kc11_MPa"], g["mc"], h),
        "M_Nm": drilling.lip_torque(g["kc11_MPa"], g["mc"], g["D_mm"], g["f_mm"], g["sigma_deg"]),
    }


def grab(g: Given) -> Found:
    """B5."""
    return {"Ft_over_Fc": drilling.pull_in_ratio(g["rake_deg"], g["mu"])}


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
    "A.speed": speed,
    "A.kienzle": kienzle,
    "A.nose": nose,
    "A.split": split,
    "A.drive": motor,
    "A.deflect": deflect,
    "A.taper": taper,
    "A.spring": spring,
    "A.rough": rough,
    "A.blim": blim,
    "A.parting": parting,
    "B.drillmh": drillmh,
    "B.drillcat": drillcat,
    "B.drillkz": drillkz,
    "B.grab": grab,
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
    "E.polyrev": polyrev,
    "E.disc": disc,
    "E.hole": hole,
    "E.burst": burst,
    "E.grade": grade,
    "F.press": press,
    "F.shrink": shrink,
    "F.thermal": thermal,
    "G.strip": strip,
    "G.torque": torque,
    "G.tap": tap,
}

# Modules of the rows that the program does not compute yet, each with what would be needed.
NOT_YET = {
    "A.facegroove": "relief of a face recess tool with a stated grind",
    "A.fgoffset": "the same tool off centre height",
    "B.ream": "the reaming table has its own published rows in drills.csv",
    "B.tapdrill": "tapping drills have their own published rows in threads.csv",
    "C.glue": "strength of a glued face arbor",
    "C.gluesize": "size of a glued face arbor",
    "C.mandrel": "expanding mandrels",
    "C.centre": "friction of a dead centre",
    "C.dog": "bending by a driving dog",
    "C.heat": "warming of the work by the cut",
    "E.runout": "couple of a disc set askew",
    "E.drillface": "balancing hole with its drill cone",
    "E.drillrim": "balancing hole in a rim",
    "E.3run": "balancing with three trial runs",
    "E.2plane": "balancing in two planes",
    "E.crit": "critical speed of a shaft with a disc",
    "E.overhung": "critical speed with the disc's own stiffening",
    "E.gyro": "precession and nutation",
    "E.string": "start by a pulled string",
    "E.spindown": "run-down in air",
    "E.pivot": "pivots under load",
    "E.windage": "drag of a turning disc in air",
    "E.discvar": "stepped turning discs",
    "F.speed": "press fits loosened by speed",
    "G.thread": "stress areas have their own published rows in threads.csv",
    "H.bush": "plain bearings",
    "H.tip": "tipping of a stand",
    "H.column": "slender pillars",
    "H.sway": "sway of pillars",
}
