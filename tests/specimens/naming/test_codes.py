"""Codes are shown, read and told apart."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from specimens.naming.codes import Code, CodeNotRead, may_be_handed_out, next_code, one_slip_away, read_code

codes = st.builds(Code, st.integers(1900, 2099), st.integers(1, 99_999))


def digits_of(code: Code) -> str:
    return f"{code.year}{code.number:04d}"


def other_digit(code: Code, place: int, digit: str) -> str:
    digits = digits_of(code)
    return digits[:place] + digit + digits[place + 1 :]


def swapped(code: Code, place: int) -> str:
    digits = digits_of(code)
    return digits[:place] + digits[place + 1] + digits[place] + digits[place + 2 :]


def typed(digits: str, letter: str) -> str:
    return f"{digits[:4]}-{digits[4:]}-{letter}"


@pytest.mark.parametrize(
    "text",
    [
        "2026-0142-E",
        "2026-0142",
        "2026-142-E",
        "2026-142",
        "20260142E",
        "20260142",
        "2026142e",
        "  2026 – 0142 — e ",
        "2026—0142‑E",
        "2026_0142_E",
        "２０２６-0142-E",
    ],
)
def test_a_code_is_read_however_it_is_typed(text: str) -> None:
    assert read_code(text) == Code(2026, 142)


@pytest.mark.parametrize("letter", ["I", "O"])
def test_one_and_nought_in_the_letters_place_are_read_i_and_o(letter: str) -> None:
    code = next(Code(2026, number) for number in range(1, 999) if Code(2026, number).letter == letter)
    digit = {"I": "1", "O": "0"}[letter]
    assert read_code(f"2026-{code.number:04d}-{digit}") == code
    assert read_code(f"2026{code.number:04d}{digit}") == code


@pytest.mark.parametrize(
    "text", ["", "E", "142-E", "26-0142-E", "2026-", "2026--E", "2026-0142-EE", "2026-01x2-E", "٢٠٢٦-0142"]
)
def test_what_is_no_code_is_answered_with_how_one_looks(text: str) -> None:
    with pytest.raises(CodeNotRead, match="2026-0142-E") as refused:
        read_code(text)
    assert refused.value.did_you_mean == ()


def test_number_nought_is_no_code() -> None:
    with pytest.raises(CodeNotRead):
        read_code("2026-0000")


@pytest.mark.parametrize(
    ("year", "number"), [(26, 1), (20260, 1), (2026, 0), (2026, -5), (2026, 100_000_000)]
)
def test_a_code_refuses_nonsense(year: int, number: int) -> None:
    with pytest.raises(ValueError, match="A code's"):
        Code(year, number)


def test_codes_sort_by_year_and_number() -> None:
    assert sorted([Code(2026, 10_000), Code(2026, 9), Code(2025, 11)]) == [
        Code(2025, 11),
        Code(2026, 9),
        Code(2026, 10_000),
    ]


def test_a_wrong_letter_is_answered_in_plain_words() -> None:
    with pytest.raises(CodeNotRead, match=r"^2026-0142 does not end in F\. Please look at the tag again\.$"):
        read_code("2026-0142-F")


def test_a_slip_is_answered_with_the_code_meant() -> None:
    with pytest.raises(CodeNotRead) as refused:
        read_code("2026-0124-E")
    assert Code(2026, 142) in refused.value.did_you_mean


def test_codes_of_plausible_years_are_proposed_first() -> None:
    near = one_slip_away(Code(3026, 142), letter="E")
    assert near[0] == Code(2026, 142)
    plausible = [1900 <= code.year < 2100 for code in near]
    assert plausible == sorted(plausible, reverse=True)
    assert any(not each for each in plausible)


@settings(deadline=None)
@given(codes)
def test_every_code_is_read_back(code: Code) -> None:
    assert read_code(str(code)) == code
    assert read_code(str(code)[:-2]) == code
    assert read_code(str(code).lower().replace("-", " ")) == code


@settings(deadline=None)
@given(codes, st.data())
def test_no_wrong_digit_is_missed_and_the_code_meant_is_proposed(code: Code, data: st.DataObject) -> None:
    place = data.draw(st.integers(0, len(digits_of(code)) - 1))
    digit = data.draw(st.sampled_from("0123456789".replace(digits_of(code)[place], "")))
    with pytest.raises(CodeNotRead) as refused:
        read_code(typed(other_digit(code, place, digit), code.letter))
    assert code in refused.value.did_you_mean


@settings(deadline=None)
@given(st.integers(1900, 2099), st.integers(0, 99_998), st.data())
def test_no_swap_of_neighbours_leads_to_another_code_handed_out(
    year: int, last: int, data: st.DataObject
) -> None:
    code = next_code(year, last)
    digits = digits_of(code)
    place = data.draw(st.integers(0, len(digits) - 2))
    assume(digits[place] != digits[place + 1])
    slip, proposed = answer(typed(swapped(code, place), code.letter))
    assert code in proposed
    if slip:
        assert not may_be_handed_out(slip)


def answer(text: str) -> tuple[Code | None, tuple[Code, ...]]:
    """The code read, if any, and the codes one slip away from what was typed."""
    try:
        read = read_code(text)
    except CodeNotRead as refused:
        return None, refused.did_you_mean
    return read, one_slip_away(read, letter=read.letter)


def test_a_nought_too_many_is_asked_about() -> None:
    with pytest.raises(CodeNotRead) as refused:
        read_code("2026-00142-E")
    assert Code(2026, 142) in refused.value.did_you_mean
    assert read_code("2026-00142") == Code(2026, 142)


def test_handing_out_leaves_few_numbers_unused() -> None:
    number, handed_out = 0, 0
    while number < 2000:
        number = next_code(2026, number).number
        handed_out += 1
    assert 1900 < handed_out < 2000


def test_the_first_number_of_a_year_follows_nought() -> None:
    assert next_code(2026) == Code(2026, 1)
