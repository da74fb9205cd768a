"""Pictures: they show the numbers of the tables, clip no word, and are the same file every time."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.text import Text

from costing.cost.quote import GROUPS
from costing.front_ends.command_line import main
from costing.front_ends.pictures.frame import HATCHES, fill
from costing.report.money import YARNS
from tests.command_line.test_calibrate import written


@pytest.fixture
def drawn(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[Figure]:
    """The figures that are saved; the working folder is empty."""
    monkeypatch.chdir(tmp_path)
    found: list[Figure] = []
    save = Figure.savefig

    def kept(figure: Figure, *arguments: Any, **options: Any) -> None:
        save(figure, *arguments, **options)
        found.append(figure)

    monkeypatch.setattr(Figure, "savefig", kept)
    return found


def asked(*words: str) -> Any:
    done = CliRunner().invoke(main, list(words))
    assert done.exit_code == 0, done.output
    return json.loads(done.output) if "--json" in words else done.output


def read_texts(figure: Figure) -> list[str]:
    """Every word of a figure, nothing of which reaches over its edge."""
    figure.draw_without_rendering()
    all_of_it = figure.get_tightbbox()
    width, height = figure.get_size_inches()
    assert all_of_it.x0 >= 0.0
    assert all_of_it.y0 >= 0.0
    assert all_of_it.x1 <= width
    assert all_of_it.y1 <= height
    texts: list[Any] = figure.findobj(Text)
    return [text.get_text() for text in texts]


def bars_of(axes: Axes) -> list[Any]:
    return list(axes.patches)


def points_of(line: Line2D) -> list[tuple[float, float]]:
    data: Any = line.get_xydata()
    return [(float(x), float(y)) for x, y in data]


def test_bars_of_drivers_end_at_the_costs_of_the_table(drawn: list[Figure]) -> None:
    words = ("band", "-e", "Q-02", "-e", "B-01", "--draws", "200", "--json", "--picture", "drivers.png")
    found = asked(*words)
    (figure,) = drawn
    for axes, code in zip(figure.axes, ("Q-02", "B-01")):
        ends = {round(bar.get_x() + bar.get_width(), 9) for bar in bars_of(axes)}
        rows = found[code]["drivers"][:12]
        wanted = {round(row[f"Cost at the {end} end [EUR/m]"], 9) for row in rows for end in ("low", "high")}
        assert ends == wanted
    texts = read_texts(figure)
    assert any("indigo dyeing: bath kept" in text for text in texts)
    assert any("EUR per m of finished cloth" in text for text in texts)
    assert Path("drivers.png").read_bytes().startswith(b"\x89PNG")


def test_bars_of_the_drivers_of_a_use_end_at_the_uses_of_the_table(drawn: list[Figure]) -> None:
    words = ("band", "-e", "Q-02", "--of", "HYDRO-88", "--draws", "200", "--json", "--picture", "use.png")
    found = asked(*words)["Q-02"]["drivers"]
    (figure,) = drawn
    ends = {round(bar.get_x() + bar.get_width(), 6) for bar in bars_of(figure.axes[0])}
    moving = [row for row in found if row["Share of the spread [%]"]][:12]
    wanted = {
        round(row[f"Use at the {end} end [g/kg]"], 6)
        for row in moving
        for end in ("low", "high")
        if row[f"Use at the {end} end [g/kg]"] is not None
    }
    assert ends == wanted
    assert any("HYDRO-88, g/kg of saleable grey yarn" in text for text in read_texts(figure))


def test_bars_of_steps_add_up_to_the_cost_of_the_step(drawn: list[Figure]) -> None:
    found = asked("quote", "-e", "Q-02", "--json", "--picture", "steps.svg")["cost_by_step"]
    (axes,) = drawn[0].axes
    names = [label.get_text() for label in axes.get_yticklabels()]
    sums = dict.fromkeys(names, 0.0)
    for bar in bars_of(axes):
        sums[names[round(bar.get_y() + bar.get_height() / 2.0)]] += bar.get_width()
    for row in found:
        if row["Step"] in sums:
            assert sums[row["Step"]] == pytest.approx(row["Cost [EUR per m of finished cloth]"])
    assert {"indigo dyeing", "drying", "range", "mill"} <= set(names)
    assert all(bar.get_width() for bar in bars_of(axes))  # nothing has no edge in the colour of its group
    read_texts(drawn[0])


def test_a_comparison_shows_cost_by_group_and_price(drawn: list[Figure]) -> None:
    done = asked("compare", "-e", "Q-02", "-e", "B-01", "-e", "W-01", "--json", "--picture", "three.png")
    above, below = drawn[0].axes
    rows = {row["Figure"]: row for row in done["compare"] if row["Unit"] == "EUR/m"}
    prices = [rows["Price"][code] for code in ("Q-02", "B-01", "W-01")]
    (line,) = above.lines
    assert [x for x, _ in points_of(line)] == pytest.approx(prices)
    assert sum(bar.get_width() for bar in bars_of(above)) == pytest.approx(
        sum(rows["All cost"][code] for code in ("Q-02", "B-01", "W-01"))
    )
    yarns = sum(rows[yarn.capitalize()][code] for yarn in YARNS for code in ("Q-02", "B-01", "W-01"))
    widths = [sum(bar.get_width() for bar in bars_of(axes)) for axes in (above, below)]
    assert widths[0] - widths[1] == pytest.approx(yarns)
    read_texts(drawn[0])


def test_a_lot_curve_marks_the_lot_and_the_order(drawn: list[Figure]) -> None:
    asked("lots", "-e", "Q-01", "--within", "5%", "--picture", "lots.png")
    texts = read_texts(drawn[0])
    assert "minimum economic lot: 9,147 m" in texts
    (own,) = [text for text in texts if text.startswith("Q-01: 8,000 m at")]
    curve, *_ = drawn[0].axes[0].lines
    nearest = min(points_of(curve), key=lambda point: abs(point[0] - 8000.0))
    assert f"{nearest[1]:.3f}" in own
    assert "m of finished cloth" in drawn[0].axes[0].get_xlabel()


def test_a_waterfall_goes_from_one_cost_to_the_other_without_a_gap(drawn: list[Figure]) -> None:
    """Each effect begins where the bar before it ends; costs end at their numbers; the axis says its begin.

    In the demo no effect is nothing, so each has a bar.
    """
    found = asked("usage", "--json", "--picture", "use.svg")
    steps = [row["All [EUR]"] for row in found["usage"]]
    (axes,) = drawn[0].axes
    bars = bars_of(axes)
    at = 0.0
    for bar, row, step in zip(bars, found["usage"], steps, strict=True):
        whole = row["Cost and effects"].endswith("cost")
        ends = (bar.get_x(), bar.get_x() + bar.get_width())
        if whole:
            at = step
            assert ends == pytest.approx((axes.get_xlim()[0], at))
        else:
            assert sorted((at, at + step)) == pytest.approx(ends)
            at += step
    assert f"EUR; the axis begins at {axes.get_xlim()[0]:,.0f}" in read_texts(drawn[0])


def test_the_same_picture_is_the_same_file_and_replaces_only_a_picture_of_ours(drawn: list[Figure]) -> None:
    words = ("lots", "-e", "Q-01", "--picture", "lots.svg")
    asked(*words)
    first = Path("lots.svg").read_bytes()
    assert b"<dc:date>" not in first
    again = CliRunner().invoke(main, list(words))
    assert again.exit_code == 2
    assert "is there already" in again.output
    asked(*words, "--overwrite")
    assert Path("lots.svg").read_bytes() == first
    Path("mine.png").write_bytes(b"mine")
    for name, said in (("mine.png", "is no earlier picture"), ("lots.pdf", "must end in .png or .svg")):
        done = CliRunner().invoke(main, [*words[:-1], name, "--overwrite"])
        assert done.exit_code == 2
        assert said in done.output
    assert Path("mine.png").read_bytes() == b"mine"


def test_too_many_panels_are_refused_in_words(drawn: list[Figure]) -> None:
    done = CliRunner().invoke(main, ["quote", "--picture", "all.png"])
    assert done.exit_code == 2
    assert "4 enquiries at most" in done.output
    assert not list(Path().iterdir())


def test_groups_are_told_apart_without_colour() -> None:
    """Neighbours differ by a hatch, or by their brightness."""
    looks = [fill(group) for group in GROUPS]
    for one, other in zip(looks, looks[1:]):
        if one.get("hatch") == other.get("hatch"):
            bright = [int(look["facecolor"][3:5], 16) for look in (one, other)]
            assert abs(bright[0] - bright[1]) > 30
    assert len(set(HATCHES.values())) == len(HATCHES)


def test_a_calibration_shows_each_period_before_and_after(drawn: list[Figure], tmp_path: Path) -> None:
    """A mark for each period at what was issued, in both states, and the line on which all would lie."""
    options = written(tmp_path, ("Q-01", "S-01"))
    words = ("calibrate", *options, "-f", "surface oxygen", "--picture", "fit.svg", "--json")
    found = json.loads(CliRunner().invoke(main, words).stdout)["predicted_use"]
    (figure,) = drawn
    texts = read_texts(figure)
    assert {"HYDRO-88", "LYE-50", "before, held back", "after, fit"} <= set(texts)
    for axes in figure.axes:
        rows = [row for row in found if row["Material"] == axes.get_title(loc="left")]
        marks = [point for drawn_ in axes.collections for point in drawn_.get_offsets().tolist()]  # type: ignore[union-attr]
        expected = [
            [row["Issued [kg]"], row[f"Predicted {state} [kg]"]]
            for row in rows
            for state in ("before", "after")
        ]
        assert sorted(marks) == [pytest.approx(point) for point in sorted(expected)]
        assert axes.get_xlim() == axes.get_ylim()
