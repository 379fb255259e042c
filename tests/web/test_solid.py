"""The figures of the view in three dimensions are those of the plan."""

from __future__ import annotations

import numpy as np
import pytest

from tommybar.facts.materials import material


@pytest.fixture(scope="module")
def plan(opened):
    """The plan that the pages show."""
    return opened.app.state.desk.plans.of("demo", "/")


@pytest.fixture(scope="module")
def solids(opened):
    """What the view of the demonstrator is fed with."""
    return opened.get("/designs/demo/solid.json").json()


def arrays(part):
    return np.array(part["points"]).reshape(-1, 3), np.array(part["triangles"]).reshape(-1, 3)


def volume(part):
    points, triangles = arrays(part)
    a, b, c = (points[triangles[:, n]] for n in range(3))
    return float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6)


def test_each_part_has_its_metal_with_its_true_holes(plan, solids):
    """Volume within the triangles times density is the mass of the plan, within 2 in 1000.

    The mass is of diameters in the middle of their limits, the solid of those drawn.
    """
    parts = {one["name"]: one for one in solids["parts"]}
    made = [one for one in plan.parts if one.part.shape is not None]

    assert {one.part.name for one in made} <= set(parts)
    for one in made:
        mass = volume(parts[one.part.name]) / 1000 * material(one.part.material).density
        assert mass == pytest.approx(one.mass, rel=2e-3), one.part.name


def test_every_surface_is_closed(solids):
    """Each edge of a triangle is met by one that runs the other way."""
    for part in solids["parts"]:
        _, triangles = arrays(part)
        edges = np.concatenate([triangles[:, [0, 1]], triangles[:, [1, 2]], triangles[:, [2, 0]]])
        there = {tuple(one) for one in edges.tolist()}
        assert len(there) == len(edges), part["name"]
        assert {(b, a) for a, b in there} == there, part["name"]


def test_each_piece_stands_once_in_a_true_frame(plan, solids):
    """As many frames as pieces, each a rotation without mirror and a shift."""
    for part in solids["parts"]:
        assert len(part["frames"]) == len(part["apart"]) == plan.design.part(part["name"]).count
        for frame in part["frames"]:
            turn = np.array(frame).reshape(3, 4)[:, :3]
            assert turn @ turn.T == pytest.approx(np.eye(3), abs=1e-9)
            assert np.linalg.det(turn) == pytest.approx(1.0)


def test_a_shaft_runs_through_its_wheel(solids):
    """The axes of shaft and wheel are one line in the assembly."""
    frames = {one["name"]: np.array(one["frames"][0]).reshape(3, 4) for one in solids["parts"]}
    wheel, shaft = frames["wheel"], frames["shaft"]
    along = shaft[:, 2]

    assert abs(wheel[:, 2] @ along) == pytest.approx(1.0)
    between = wheel[:, 3] - shaft[:, 3]
    assert np.linalg.norm(between - (between @ along) * along) == pytest.approx(0.0, abs=1e-6)


def test_what_cannot_be_shown_is_said(plan, solids):
    """Every piece of the design is either there or named with its reason."""
    shown = {one["name"] for one in solids["parts"]}
    for part in plan.design.parts:
        if part.name not in shown:
            assert any(words.startswith(f"{part.name} is not shown: ") for words in solids["lacks"])


def test_a_part_says_material_size_mass_and_page(opened, solids):
    """The same words as the list; the link leads to a page."""
    wheel = next(one for one in solids["parts"] if one["name"] == "wheel")

    assert (wheel["material"], wheel["family"]) == ("mild steel", "steel")
    assert wheel["size"] == "Ø69.5 × 19 mm"
    assert f'<td class="size">{wheel["size"]}</td>' in opened.get("/designs/demo").text
    assert opened.get(wheel["page"]).status_code == 200


def test_one_part_lies_with_its_axis_across_and_is_as_drawn(opened):
    """The part's page shows the drawing's 90 mm and not the plan's 69.5; face A is to the left."""
    solids = opened.get("/designs/demo/solid/wheel").json()
    (part,) = solids["parts"]
    points, _ = arrays(part)
    frame = np.array(part["frames"][0]).reshape(3, 4)

    assert part["size"].startswith("Ø90 × ")
    assert 2 * np.hypot(points[:, 0], points[:, 1]).max() == pytest.approx(90.0, abs=0.1)
    assert frame @ [0, 0, 1, 1] == pytest.approx([1, 0, 0])
    assert [one["name"] for one in solids["views"]][:2] == ["From the corner", "From face A"]
    assert solids["views"][1]["from"] == [-1, 0, 0]
    assert solids["apart"] is False


def test_a_part_that_is_none_is_refused(opened, words):
    """The nearest name is offered."""
    answer = opened.get("/designs/demo/solid/whel")

    assert answer.status_code == 400
    assert 'Did you mean "wheel"?' in words(answer)


def test_the_page_keeps_its_picture_for_those_who_see_no_view(opened):
    """The still picture stands inside the figure that the view takes over."""
    text = opened.get("/designs/demo").text
    figure = text[text.index('<figure class="solid"') : text.index("</figure>")]

    assert "The parts of Hand-cranked flywheel demonstrator" in figure
    assert "data-solid-begin" in opened.get("/designs/demo/parts/wheel").text


def test_the_library_is_served_from_here_with_its_licence(opened):
    """What the viewer names is there, in the version that its name says."""
    scene = opened.get("/static/solid_scene.js").text
    name = scene.split('LIBRARY = "./')[1].split('"')[0]
    library = opened.get(f"/static/{name}")

    assert library.status_code == 200
    assert name in ("three-" + library.text.split("three.js ")[1].split(",")[0] + ".min.js")
    assert "Permission is hereby granted" in opened.get("/static/three-LICENSE.txt").text
    assert "http://" not in scene and "https://" not in scene


def test_what_turns_is_told_with_its_axis_and_its_neighbours(plan, solids):
    """Shaft, wheel, crank and handle go round the shaft's own axis, which every round piece of them keeps."""
    (move,) = solids["moves"]
    names = {solids["parts"][part]["name"] for part, _ in move["pieces"]}

    assert (move["unit"], move["round"], move["low"], move["high"]) == ("deg", True, 0.0, 360.0)
    assert {"shaft", "wheel", "crank"} <= names and not names & {"base", "pillar", "bush"}
    axis = np.array(move["axis"]).reshape(3, 4)
    for part, piece in move["pieces"]:
        if solids["parts"][part]["name"] in ("shaft", "wheel", "crank"):
            frame = np.array(solids["parts"][part]["frames"][piece]).reshape(3, 4)
            aside = frame[:, 3] - axis[:, 3]
            along = axis[:, 2]
            assert abs(abs(frame[:, 2] @ along) - 1) < 1e-9
            assert np.linalg.norm(aside - (aside @ along) * along) < 1e-6
    assert len(move["told"]) == 3
    assert all(" passes " in one or " touch " in one for one in move["told"])


def test_a_wheel_passes_its_base_at_what_the_design_leaves(plan, solids):
    """The axle stands base_thick + wheel_dia / 2 + clear over the foot: the rim clears the base by clear."""
    from tommybar.pack.units import Reader
    from tommybar.web.pages.moves import _all_gaps, _told

    gap = next(one for one in _all_gaps(plan.design) if (one.moving[0], one.fixed[0]) == ("wheel", "base"))
    clear = dict(plan.design.values)["clear"]

    assert gap.gap == pytest.approx(clear, abs=0.02)
    assert _told(gap, Reader()).startswith(f"wheel passes base at {gap.gap - gap.bound:.2f} mm at least")
