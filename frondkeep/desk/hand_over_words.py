"""What a hand-over says to one reader, and what they may answer."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.urls import reverse

from frondkeep.desk.finding import visible_ids
from frondkeep.desk.people import capital, keeper_words
from frondkeep.desk.plant_lists import seat
from frondkeep.society.models import Keeper, User
from specimens.models import HandOver, Specimen
from specimens.naming.dates import say_when
from specimens.services.shown_names import shown_name

State = HandOver.State


@dataclass(frozen=True, slots=True)
class Answer:
    """A button: where it posts, what it says, and for which keeper it speaks, if for one."""

    url: str
    words: str
    keeper: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldHandOver:
    """One hand-over for a list or page. `before` and `after` stand around the plant's name; `shown` says
    whether its code and page may be, `piece` is the receiver's record where the reader may see it."""

    hand_over: HandOver
    before: str
    after: str
    shown: bool
    piece: Specimen | None
    state: str
    rival: str
    answers: list[Answer]

    @property
    def plant(self) -> Specimen:
        return self.hand_over.plant

    @property
    def name_words(self) -> str:
        """The plant's name without marks, for what is only heard."""
        return shown_name(self.plant).plain


def told(
    hand_overs: Iterable[HandOver], *, reader: User, keepers: Iterable[Keeper] = ()
) -> list[ToldHandOver]:
    """These hand-overs, fetched `with_page_parts`, as the reader may read of them; three queries for all.

    `keepers` are those the reader may take something from a table for.
    """
    found = list(hand_overs)
    plants = [plant for each in found for plant in (each.plant, each.piece, rival_plant(each)) if plant]
    visible = visible_ids(reader, [plant.pk for plant in plants])
    seat([each.plant for each in found])
    keepers = list(keepers)
    return [
        ToldHandOver(
            hand_over=each,
            before=before(each, reader),
            after=after(each, reader),
            shown=each.plant_id in visible,
            piece=each.piece if each.piece_id in visible else None,
            state=state_words(each, reader),
            rival=rival_words(each, reader, visible),
            answers=answers_of(each, reader, keepers),
        )
        for each in found
    ]


def before(each: HandOver, reader: User) -> str:
    """The sentence up to the plant's name: “Ada Quill gave you a pup of”."""
    giver, receiver = keeper_words(each.giver, reader), receiver_words(each, reader)
    what = f"a {each.get_kind_display()} of" if each.is_piece else ""
    if is_told_by_receiver(each):
        start = f"{receiver} logged" if each.is_piece else has_it(receiver)
    elif each.on_table and each.receiver is None:
        start = f"{giver} put on the table"
    else:
        start = f"{giver} gave {receiver}"
    return capital(" ".join(part for part in (start, what) if part))


def has_it(receiver: str) -> str:
    return "you say you have" if receiver == "you" else f"{receiver} says they have"


def after(each: HandOver, reader: User) -> str:
    """The rest of the sentence: “, from you, at the Autumn meeting, in June 2026”."""
    parts = [f"from {keeper_words(each.giver, reader)}"] if is_told_by_receiver(each) else []
    parts += [f"at {each.meeting}"] if each.meeting else []
    parts += [say_when(each.handed)] if each.handed.words and not is_the_meetings_day(each) else []
    return "".join(f", {part}" for part in parts)


def is_the_meetings_day(each: HandOver) -> bool:
    return each.meeting is not None and each.handed.earliest == each.handed.latest == each.meeting.date


def is_told_by_receiver(each: HandOver) -> bool:
    return each.state == State.CLAIMED or (
        each.state == State.REFUSED and (each.to_settle or each.piece_id is not None)
    )


def receiver_words(each: HandOver, reader: User) -> str:
    """The receiver as the reader may know them: their giver by the words they typed themselves."""
    if each.receiver is not None and reader.acts_for(each.receiver):
        return keeper_words(each.receiver, reader)
    may_read = reader.is_curator or reader.acts_for(each.giver)
    typed = each.receiver_words if may_read else ""
    return typed or keeper_words(each.receiver, reader) or "somebody"


def state_words(each: HandOver, reader: User) -> str:
    if each.to_settle and each.state == State.REFUSED:
        return "denied by its giver; the curator is asked"
    if each.state == State.OFFERED:
        mine = each.receiver is not None and reader.acts_for(each.receiver)
        return (
            "lies on the table" if each.lies_on_table else waits_for(receiver_words(each, reader), mine=mine)
        )
    if each.state == State.CLAIMED:
        return waits_for(keeper_words(each.giver, reader), mine=reader.acts_for(each.giver))
    return each.get_state_display()


def waits_for(whom: str, *, mine: bool) -> str:
    return "waits for you" if mine else f"waits for {whom}"


def rival_plant(each: HandOver) -> Specimen | None:
    return each.rival.plant if each.rival else None


def rival_words(each: HandOver, reader: User, visible: frozenset[int]) -> str:
    """What the other side told of the same evening, where it is another plant."""
    plant = rival_plant(each)
    if plant is None:
        return ""
    code = plant.code if plant.pk in visible else "a plant not shown"
    giver = capital(keeper_words(each.giver, reader))
    told_else = f"{giver} told of a piece of {code} instead."
    return f"{told_else} Is it one piece, or two? If this one is right, that one is taken back."


def answers_of(each: HandOver, reader: User, keepers: list[Keeper]) -> list[Answer]:
    """The buttons for this reader, the likeliest first."""
    gives = reader.is_curator or reader.acts_for(each.giver)
    receives = each.receiver is not None and (reader.is_curator or reader.acts_for(each.receiver))
    if each.lies_on_table:
        picked = [pick(each, keeper, reader) for keeper in keepers if not reader.acts_for(each.giver)]
        return picked + ([button(each, "hand-over-take-back", "Take it back")] if gives else [])
    if each.state == State.OFFERED:
        took = (
            [
                button(
                    each,
                    "hand-over-accept",
                    "Yes, I have it" if reader.acts_for(each.receiver) else "They have it",
                ),
                button(
                    each, "hand-over-refuse", "Not mine" if reader.acts_for(each.receiver) else "Not theirs"
                ),
            ]
            if receives
            else []
        )
        return took + ([button(each, "hand-over-take-back", "Take it back")] if gives else [])
    if each.state == State.CLAIMED:
        return claim_answers(each, gives=gives, receives=receives)
    if each.to_settle and reader.is_curator:
        return [
            button(each, "hand-over-agree", "It is so" if not each.is_piece else "It is a piece of it"),
            button(each, "hand-over-settled", "Leave it as it is"),
        ]
    return []


def claim_answers(each: HandOver, *, gives: bool, receives: bool) -> list[Answer]:
    apart = [button(each, "hand-over-apart", "They are two pieces")] if each.rival_id else []
    if not gives:
        return apart if receives else []
    asked = [button(each, "hand-over-agree", "Yes, that is right")]
    return [
        *asked,
        button(each, "hand-over-deny", "Not a piece of mine" if each.is_piece else "Not so"),
        *apart,
    ]


def button(each: HandOver, name: str, words: str) -> Answer:
    return Answer(reverse(name, args=[each.token]), words)


def pick(each: HandOver, keeper: Keeper, reader: User) -> Answer:
    words = "I took this" if keeper.kind == Keeper.Kind.MEMBER else f"For {keeper.shown_to(reader)}"
    return Answer(reverse("hand-over-pick", args=[each.token]), words, keeper.pk)
