"""The drawing of a plant's ancestors, and the list beside it, as one reader may see them."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from lineage.services.ancestry import MOST, ancestry_of
from lineage.services.branches import list_lines
from lineage.services.chart import GAP_ACROSS, WIDTH, draw
from lineage.services.lineage_pages import chart_of, lineage_of_plant
from specimens.models import Came, SeenBy
from specimens.services.sowings import record_sowing
from specimens.services.specimens import end_specimen
from tests.cast import make_curator, make_member
from tests.lineage.kin import make_cultivar, make_name, make_plant, make_pup, node, spores_of

pytestmark = pytest.mark.django_db


@pytest.fixture
def reader():
    user = make_member("Ada Quill").user
    assert not user.roles  # read once a request, and so are the keepers
    assert user.keeper_ids
    return user


def sporeling(*sources, **fields):
    return make_plant(came=Came.SOWING, sowing=record_sowing(sources=spores_of(*sources)), **fields)


def relatives(plant, reader):
    return list(ancestry_of(node(plant), reader).values())


def test_divisions_are_folded_into_one_step(reader):
    plant = first = make_plant(name=make_name("andinum"))
    for _ in range(4):
        plant = make_pup(plant)
    here, above = relatives(plant, reader)
    assert (here.code, above.code) == (plant.code, first.code)
    assert here.steps[0].words == "4 divisions"


def test_a_sport_is_not_folded_away(reader):
    first = make_plant(name=make_name("andinum"))
    sport = make_pup(make_pup(first), sport=True)
    told = relatives(make_pup(make_pup(sport)), reader)
    assert [one.code for one in told][1] == sport.code
    assert told[1].note == "it came out different"


def test_where_two_lines_meet_nothing_is_folded(reader):
    first = make_plant(name=make_name("andinum"))
    middle = make_pup(first)
    one, two = make_pup(middle), make_pup(middle)
    told = relatives(sporeling(one, two), reader)
    assert middle.code in [relative.code for relative in told]


def test_a_plant_not_shared_is_a_plant_not_shown(reader):
    secret = make_plant(name=make_name("andinum"), seen_by=SeenBy.KEEPER)
    end_specimen(secret, version=secret.version, state="dead")
    plant = sporeling(secret)
    shown = relatives(plant, reader)[1]
    assert (shown.title, shown.code, shown.url, shown.state) == ("a plant not shown", "", "", "")
    assert relatives(plant, make_curator().user)[1].code == secret.code


def test_a_dead_plant_is_marked(reader):
    parent = make_plant(name=make_name("andinum"))
    plant = make_pup(parent)
    end_specimen(parent, version=parent.version, state="dead")
    assert [one.state for one in relatives(plant, reader)] == ["", "dead"]


def test_three_certainties_have_three_looks(reader):
    clone = make_cultivar("Silver Tassel", parent=make_name("andinum"))
    plant = sporeling(make_plant(name=clone), "a stray")
    chart = chart_of(plant, reader)
    assert {line.certainty for line in chart.lines} == {"assumed", "unknown"}
    assert [box.dashes for box in chart.boxes if box.relative is None] == ["2 5"]
    assert "by its name" in [line.words for line in chart.lines]


def test_parents_stand_above_their_children_and_boxes_never_overlap(reader):
    andinum, ridleyi = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    first = sporeling(andinum, ridleyi)
    last = sporeling(first, andinum)
    chart = chart_of(last, reader)
    at = {box.relative.code: box for box in chart.boxes}
    assert at[last.code].y > at[first.code].y > at[andinum.code].y
    rows = {}
    for box in chart.boxes:
        rows.setdefault(box.y, []).append(box.x)
    for xs in rows.values():
        apart = [right - left for left, right in zip(sorted(xs), sorted(xs)[1:], strict=False)]
        assert all(gap >= WIDTH + GAP_ACROSS for gap in apart)
    assert all(box.x >= 0 and box.x + WIDTH <= chart.width for box in chart.boxes)


def test_a_long_line_is_cut_and_says_so(reader):
    plant = make_plant(name=make_name("andinum"))
    for _ in range(MOST + 3):
        plant = sporeling(plant)
    shown = lineage_of_plant(plant, reader)
    assert (len(shown.chart.boxes), shown.chart.is_cut) == (MOST, True)


def test_the_list_holds_every_plant_once_with_its_parents_below_it(reader):
    andinum = make_plant(name=make_name("andinum"))
    first = sporeling(andinum)
    last = sporeling(first, andinum)
    lines = list_lines(ancestry_of(node(last), reader))
    told = [(line.relative.code, line.opens, len(line.closes), line.is_repeated) for line in lines]
    assert told == [
        (last.code, True, 0, False),
        (first.code, True, 0, False),
        (andinum.code, False, 1, False),
        (andinum.code, False, 1, True),
    ]


def test_every_list_that_opens_closes(reader):
    plant = make_plant(name=make_name("andinum"))
    for _ in range(15):
        plant = sporeling(plant, "a stray")
    lines = list_lines(ancestry_of(node(plant), reader))
    assert sum(line.opens for line in lines) == sum(len(line.closes) for line in lines)


def test_the_same_number_of_queries_however_many_ancestors(reader):
    parents = [make_plant(name=make_name(f"species{n}")) for n in "abcdef"]
    small, large = sporeling(parents[0]), sporeling(*parents)
    assert queries_for(small, reader) == queries_for(large, reader) <= 20


def queries_for(plant, reader):
    with CaptureQueriesContext(connection) as asked:
        lineage_of_plant(plant, reader)
    return len(asked)


def test_a_long_name_is_shown_whole_and_every_box_grows_for_it(reader):
    short = chart_of(make_plant(name=make_name("andinum")), reader)
    named = make_plant(name=make_cultivar("Extraordinarily Long Name of a Fern"))
    chart = chart_of(named, reader)
    shown = [" ".join("".join(run.text for run in runs) for _, runs in box.name_lines) for box in chart.boxes]
    assert "P. ‘Extraordinarily Long Name of a Fern’" in shown
    assert chart.box_height > short.box_height


def test_a_chart_of_one_plant_is_one_box(reader):
    plant = make_plant(name=make_name("andinum"))
    chart = draw(ancestry_of(node(plant), reader))
    assert (len(chart.boxes), chart.lines) == (1, ())


def test_a_line_that_passes_a_row_crosses_no_box_in_it(reader):
    andinum = make_plant(name=make_name("andinum"))
    first = sporeling(andinum)
    chart = chart_of(sporeling(sporeling(first), andinum), reader)
    passing = [line for line in chart.lines if "V" in line.path]
    boxes = [(box.x, box.x + chart.box_width) for box in chart.boxes]
    assert passing
    for line in passing:
        upright = float(line.path.split(" V")[0].split(" ")[-2])
        assert not any(left <= upright <= right for left, right in boxes)
