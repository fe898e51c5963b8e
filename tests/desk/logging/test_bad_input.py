"""What cannot be taken is answered where it was typed, with everything typed still there; nothing is kept."""

import pytest

from frondkeep.desk.logging import writing
from frondkeep.society.models import Member, Submission
from lineage.services.descent import DescentError
from specimens.models import CodeCounter, Specimen
from tests.cast import make_plant
from tests.desk.conftest import signed_in
from tests.desk.logging.typing import confirmed, filled, logged_plants, sent, text_of

pytestmark = pytest.mark.django_db

CHECK = "Look it over"


def refused(member: Member, form: dict[str, object]) -> str:
    """The page that gives the form back."""
    response = sent(signed_in(member), form)
    assert response.status_code == 422
    assert not Submission.objects.exists()
    return response.content.decode()


def test_every_mistake_is_told_at_once_with_a_link_to_its_field(ada: Member) -> None:
    form = filled({"label_text": "x" * 501, "came": ""}, {"came": "piece", "parent_text": "2026-0001-Q"})
    html = refused(ada, form | {"acquired": "31/02/2020"})
    for place in ("acquired", "plants-0-label_text", "plants-0-came_0", "plants-1-parent_text"):
        assert f'href="#id_{place}"' in html
        assert f'id="id_{place}"' in html
    assert "Plant 2, Piece of which plant" in html


def test_a_tag_too_long_is_told_how_long_it_is_and_kept(ada: Member) -> None:
    html = refused(ada, filled({"label_text": "x" * 501}))
    assert "This is 501 characters long; a label holds 500." in html
    assert "x" * 501 in html


def test_an_empty_form_asks_for_the_first_plant(ada: Member) -> None:
    html = refused(ada, filled({"label_text": "", "came": ""}))
    assert "Type what the tag says." in html
    assert "Tap how it came." in html


@pytest.mark.parametrize("words", ["31/02/2020", "the year of the cat", "1 June 2087"])
def test_a_date_that_is_none_or_has_not_come_yet(ada: Member, words: str) -> None:
    html = refused(ada, filled({"label_text": "my tag"}, acquired=words))
    assert f'value="{words}"' in html
    assert 'value="my tag"' in html
    assert 'href="#id_acquired"' in html


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("🌿 mine", "🌿 mine"),
        ("<script>alert(1)</script>", "<script>alert(1)</script>"),
        ("שלום", "שלום"),
        ("a\u202eb", "ab"),
        ("a\x00b\x07", "a\ufffdb\ufffd"),
        ("{{ secret }}", "{{ secret }}"),
    ],
)
def test_whatever_stands_on_a_tag_is_kept_as_text(ada: Member, typed: str, kept: str) -> None:
    form = filled({"label_text": typed})
    page = sent(signed_in(ada), form)
    assert page.status_code == 200
    assert "<script>alert" not in page.content.decode()
    after = signed_in(ada).post("/log/", confirmed(form, p0_tag_genus="?"), follow=True)
    assert logged_plants(form)[0].label_text == kept
    assert "<script>alert" not in after.content.decode()


@pytest.mark.parametrize("field", ["from_text", "parent_text", "spores_of", "own_number", "notes"])
def test_control_characters_elsewhere_are_told(ada: Member, field: str) -> None:
    html = refused(ada, filled({"label_text": "my tag", "came": "piece", field: "a\x00b"}))
    assert f'id="id_plants-0-{field}_error"' in html
    assert 'value="my tag"' in html


@pytest.mark.parametrize(
    "field", [{"came": "flown in"}, {"kind": "wing"}, {"seen_by": "everybody"}, {"holds": "gold"}]
)
def test_answers_nobody_offered_are_refused(ada: Member, field: dict[str, str]) -> None:
    refused(ada, filled(field))


def test_a_code_of_nobodys_is_told(ada: Member) -> None:
    html = refused(ada, filled({"came": "piece", "parent_text": "2026-0001-Q"}))
    assert "Please look at the tag again" in html


def test_thirteen_plants_whose_spores_are_too_many(ada: Member) -> None:
    html = refused(ada, filled({"came": "sowing", "spores_of": ",".join("abcdefghijklm")}))
    assert "12 plants at most" in html


def test_more_cards_than_thirty_are_refused(ada: Member) -> None:
    assert sent(signed_in(ada), filled(*({} for _ in range(31)))).status_code == 422


def test_nonsense_in_the_hidden_fields_is_refused(ada: Member) -> None:
    form = filled({"label_text": "my tag"})
    for broken in ({"plants-TOTAL_FORMS": "many"}, {"submission": "x"}, {"meeting": "999"}):
        response = sent(signed_in(ada), form | broken)
        assert response.status_code == 422


def test_an_answer_to_a_question_nobody_asked_changes_nothing(ada: Member, jonas: Member) -> None:
    theirs = make_plant(jonas)
    form = confirmed(filled({}), p0_twice=theirs.code, p0_parent=theirs.code, p0_tag_means="1")
    assert sent(signed_in(ada), form).status_code == 302
    assert logged_plants(form)[0] != theirs


def test_a_plant_that_would_come_from_itself_is_told_at_its_card_and_none_is_kept(
    ada: Member, monkeypatch: pytest.MonkeyPatch
) -> None:
    parent = make_plant(ada)
    log_specimen = writing.log_specimen

    def refuse_the_second(**fields: object) -> Specimen:
        if fields["label_text"] == "unknown":
            raise DescentError(f"A plant cannot come from itself: {parent.code}.", [parent.code])
        return log_specimen(**fields)

    last = CodeCounter.objects.get().last
    monkeypatch.setattr(writing, "log_specimen", refuse_the_second)
    form = filled({}, {"label_text": "unknown", "came": "piece", "parent_text": parent.code})
    html = refused(ada, confirmed(form))
    assert 'id="id_plants-1-parent_text_error"' in html
    assert f"A plant cannot come from itself: {parent.code}." in html
    assert Specimen.objects.count() == 1
    assert CodeCounter.objects.get().last == last


def test_looking_over_uses_up_no_code(ada: Member) -> None:
    make_plant(ada)
    last = CodeCounter.objects.get().last
    assert CHECK in text_of(sent(signed_in(ada), filled({}, {})))
    assert CodeCounter.objects.get().last == last
