"""The view in three dimensions in a browser: drawn, turned, pulled apart, touched, and missing."""

from __future__ import annotations

import base64

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

SHARE = """async (png) => {
  const picture = new Image();
  picture.src = 'data:image/png;base64,' + png;
  await picture.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [120, 90];
  const pen = canvas.getContext('2d');
  pen.drawImage(picture, 0, 0, 120, 90);
  const all = pen.getImageData(0, 0, 120, 90).data;
  const ground = all.slice(4 * (120 * 5 + 5), 4 * (120 * 5 + 5) + 3); // inside the frame, near its corner
  let other = 0;
  for (let n = 0; n < all.length; n += 4) other += [0, 1, 2].some((c) => Math.abs(all[n + c] - ground[c]) > 12);
  return [4 * other / all.length, Array.from(ground)];
}"""
GROUNDS = {False: [246, 245, 240], True: [34, 35, 31]}  # paper and shed, as the page has them


def drawn(page):
    """How often the view has been drawn."""
    return int(page.locator(".solid-view").get_attribute("data-drawn") or 0)


def settled(page):
    """Wait until nothing moves any more, and give a picture of the view."""
    for _ in range(60):
        before = drawn(page)
        page.wait_for_timeout(150)
        if drawn(page) == before and before > 0:
            return page.locator(".solid-view").screenshot()
    raise AssertionError("the view goes on moving")


@pytest.fixture
def view(page_at, demo):
    """The overview with its view drawn, at a width."""

    def open_view(width="desk", **more):
        page = page_at(width, **more)
        page.goto(demo)
        page.locator(".solid-acts").wait_for()
        return page

    return open_view


def test_the_assembly_is_drawn_and_pulled_apart(view, shoot):
    """The view takes the picture's place; apart it looks otherwise, together as before."""
    page = view()
    together = settled(page)
    expect(page.locator(".solid-still")).to_be_hidden()
    shoot(page, "solid-together-desk")

    page.get_by_role("button", name="Pull it apart").click()
    apart = settled(page)
    shoot(page, "solid-apart-desk")
    page.get_by_role("button", name="Put it together").click()

    assert apart != together
    assert settled(page) == together


def test_arrows_and_signs_turn_and_approach(view):
    """Right and left undo one another; nearer shows more metal than farther."""
    page = view()
    at_first = settled(page)
    page.locator(".solid-view").focus()
    page.keyboard.press("ArrowRight")
    turned = settled(page)
    page.keyboard.press("ArrowLeft")
    assert turned != at_first
    page.get_by_role("button", name="From the side").click()
    side = settled(page)
    page.keyboard.press("Tab")
    assert side != at_first
    page.locator(".solid-view").focus()
    page.keyboard.press("+")
    near = settled(page)
    page.keyboard.press("-")
    page.keyboard.press("-")
    assert near != side != settled(page)


@pytest.mark.parametrize(("width", "touch"), [("desk", False), ("phone", True)])
def test_a_touched_part_says_what_it_is(view, shoot, width, touch):
    """Each place that is touched names a part with material, size, mass and a link that leads there."""
    page = view(width, touch=touch)
    settled(page)
    box = page.locator(".solid-view").bounding_box()
    x, y = box["width"] / 2, box["height"] / 2
    if touch:
        page.locator(".solid-view").tap(position={"x": x, "y": y})
    else:
        page.locator(".solid-view").click(position={"x": x, "y": y})
    name = page.locator(".solid-part b").inner_text()
    words = page.locator(".solid-part").inner_text()
    row = page.get_by_role("row").filter(has=page.get_by_role("link", name=name, exact=True))
    assert row.locator(".size").inner_text() in words
    assert " g" in words
    shoot(page, f"solid-touched-{width}")
    page.get_by_role("link", name=f"The page of {name}").click()
    expect(page).to_have_url(f"{page.url.split('/designs')[0]}/designs/demo/parts/{name.replace(' ', '_')}")


def test_the_list_shows_a_part_in_the_view(view):
    """The button in the row names the part under the view, and takes it back."""
    page = view()
    settled(page)
    show = page.get_by_role("button", name="Show shaft in the view")
    show.click()
    expect(show).to_have_attribute("aria-pressed", "true")
    expect(page.locator(".solid-part b")).to_have_text("shaft")
    show.click()
    expect(page.locator(".solid-part")).to_have_text("Touch a part to see what it is.")


def test_who_wants_no_motion_gets_none(chromium, served, demo):
    """With reduced motion it is apart in one drawing."""
    context = chromium.new_context(base_url=served[0], reduced_motion="reduce")
    page = context.new_page()
    page.goto(demo)
    page.locator(".solid-acts").wait_for()
    settled(page)
    before = drawn(page)
    page.get_by_role("button", name="Pull it apart").click()
    settled(page)
    assert drawn(page) - before <= 2
    context.close()


def test_without_webgl_the_picture_stays_and_is_told(page_at, demo):
    """A browser that cannot draw says so in words."""
    page = page_at("tablet")
    page.add_init_script("HTMLCanvasElement.prototype.getContext = () => null;")
    page.goto(demo)
    page.get_by_text("This browser cannot draw in three dimensions").wait_for()
    expect(page.locator(".solid-still svg")).to_be_visible()
    assert page.locator(".solid-acts").count() == 0


def test_a_plan_that_takes_long_is_waited_for_and_a_refusal_is_told(page_at, demo):
    """The page of work in progress is asked past; an answer that is none leaves the picture and says so."""
    page = page_at("tablet")
    answers = [{"content_type": "text/html", "body": "<p>The plan is being worked out</p>"}, {"status": 400}]
    page.route("**/solid.json", lambda route: route.fulfill(**answers.pop(0)))
    page.goto(demo)
    page.get_by_text("the server answered 400. Here is the picture instead.").wait_for()

    assert answers == []
    expect(page.locator(".solid-still svg")).to_be_visible()


def test_a_part_is_turned_on_demand(page_at, demo, axe, shoot):
    """Nothing is fetched until the button is pressed; the library comes from here; the scan finds nothing."""
    page = page_at("tablet")
    asked: list[str] = []
    page.on("request", lambda one: asked.append(one.url))
    page.goto(f"{demo}/parts/wheel")
    page.wait_for_load_state("networkidle")
    assert not any("three-" in one or "/solid/" in one for one in asked)
    page.get_by_role("button", name="Turn it in three dimensions").click()
    page.get_by_role("button", name="From face A").click()
    settled(page)
    assert any("/static/three-" in one for one in asked)
    assert axe(page) == []
    shoot(page, "solid-part-tablet")


@pytest.mark.parametrize(("width", "night"), [("phone", False), ("tablet", True), ("desk", False)])
def test_metal_fills_the_view_on_the_page_s_own_ground(view, width, night):
    """Between a tenth and nine tenths of the view is not ground; the ground is the page's colour."""
    page = view(width, night=night)
    share, ground = page.evaluate(SHARE, base64.b64encode(settled(page)).decode())

    assert 0.1 < share < 0.9
    assert ground == GROUNDS[night]


@pytest.mark.parametrize("width", ["phone", "tablet", "desk"])
def test_what_moves_is_turned_to_any_angle(view, shoot, width):
    """A press turns the crank on, a figure turns it there, a whole turn on it stands as before; nonsense is told."""
    page = view(width)
    move = page.locator(".solid-move")
    expect(move.locator("legend")).to_contain_text("Turn")
    field = move.locator("input")
    as_drawn = settled(page)
    move.locator("button", has_text="+").click()
    assert field.input_value() == "15"
    turned = settled(page)
    field.fill("-90")
    field.press("Enter")
    assert field.input_value() == "270"
    far = settled(page)
    shoot(page, f"solid-turned-{width}")
    field.fill("720")
    field.press("Enter")

    assert field.input_value() == "0"
    assert settled(page) == as_drawn
    assert len({as_drawn, turned, far}) == 3
    field.fill("a bit")
    field.press("Enter")
    expect(page.locator(".solid-said")).to_contain_text("an angle in degrees is wanted")
    box = move.bounding_box()
    assert box["x"] >= 0 and box["x"] + box["width"] <= page.viewport_size["width"]
