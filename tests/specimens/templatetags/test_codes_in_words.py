"""Codes inside a sentence stay on one line; the rest of the sentence stays what it was."""

from django.utils.safestring import mark_safe

from specimens.templatetags.codes import codes


def test_each_code_in_a_sentence_is_kept_together() -> None:
    assert (
        codes("Pup of 2019-0088-B or 2014-0012-R.")
        == 'Pup of <span class="code">2019-0088-B</span> or <span class="code">2014-0012-R</span>.'
    )


def test_words_around_a_code_are_escaped() -> None:
    assert codes("<b>2019-0088-B") == '&lt;b&gt;<span class="code">2019-0088-B</span>'


def test_words_that_are_safe_already_are_not_escaped_again() -> None:
    assert codes(mark_safe("<i>ex</i>")) == "<i>ex</i>"


def test_a_number_that_only_looks_like_a_code_is_left_alone() -> None:
    assert codes("12019-0088-B, 2019-0088-BC, 2019-0088") == "12019-0088-B, 2019-0088-BC, 2019-0088"
