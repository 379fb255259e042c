"""Rows of cutting and drilling (modules A and B)."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any

from tommybar.facts import drills, threads
from tommybar.mechanics import chatter, cutting, deflection, drilling, drive, nose_radius

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


def ream(g: Given) -> Found:
    """B4."""
    chosen = drills.reaming_drill(g["D_ream_mm"], g["drills_mm"], least=g["amin_mm"], most=g["amax_mm"])
    return {"drill_mm": chosen.drill, "allow_mm": chosen.allowance}


def tapdrill(g: Given) -> Found:
    """B6."""
    size = threads.thread(f"M{g['D_mm']:g}x{g['P_mm']:g}")
    hole = threads.drill_for_percent(size, g["pct"])
    return {"drill_mm": hole, "engage_of_H1_pct": threads.engagement_percent(size, hole, "basic")}


def grab(g: Given) -> Found:
    """B5."""
    return {"Ft_over_Fc": drilling.pull_in_ratio(g["rake_deg"], g["mu"])}


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
    "B.ream": ream,
    "B.tapdrill": tapdrill,
}
