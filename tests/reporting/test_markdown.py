"""A summary in Markdown: whole texts, and that hostile texts are nothing but text in it."""

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token

from reviewer.judging.reviewed import Review
from reviewer.notation.plain import plain
from reviewer.reporting.markdown import MarkdownReport
from reviewer.reporting.markdown_text import JOINER, marked, table

Held = Callable[[str, str], None]
# CommonMark 0.31.2 with the tables and the strikethrough of GFM 0.29, HTML taken as HTML.
PARSER = MarkdownIt("commonmark", {"html": True}).enable(["table", "strikethrough"])
OURS = {"<details>", "</details>"}
HOSTILE = [
    "a | b", "`x`", "``", "<script>alert(1)</script>", "<!-- ", "[a](http://b)", "![a](b)", "**b**",
    "__b__", "_b_", "~~b~~", "1. one", "- two", "+ three", "# four", "> five", "---", "===", "&lt;",
    "a\\", "\\|", "</details>", "@someone", "#12", "!7", "http://a.example", "www.a.example",
    "a@b.example", "$x$", "    code", "\ttab", "line\nbreak", "\x1b[2J", "a\u202eb", "\udc80",
    "[x]: http://y", "| --- |", "*", "_", "- ---", "<b", "]]>", "<a@b.example>", "```",
]  # fmt: skip


def told(*reviews: Review) -> str:
    report = MarkdownReport("1.2.3")
    return "".join(report.put(report.piece(each)) for each in reviews) + report.end()


def test_every_verdict(stage: Review, held: Held) -> None:
    held("stage.md", told(stage))


def test_what_to_change_leads_and_the_rest_is_folded(bench: Review) -> None:
    text = told(bench)
    first = text.index("### Before cutting")
    assert text.index("| what to change | of the limit | finding |") > first
    assert "### " not in text[:first]
    assert text.index("<details>") > text.index("| base.feet.circle from 640 to 1910")
    assert text.count("<details>") == text.count("</details>") > 1
    assert text.index("### While assembling") > first
    assert "### Not reviewed" in text[text.rindex("### ", 0, text.index("### Not reviewed") + 4) :]


def test_nothing_is_left_out(stage: Review, shop: Review) -> None:
    for review in (stage, shop):
        text = told(review).replace("\\", "")
        for finding in review.findings:
            if finding.verdict != "not applicable" and not finding.is_silenced:
                assert finding.name in text
        for change in review.changes:
            assert change.name in text
            assert change.why in text
        assert "no licence" in text
        assert "Reviewed by reviewer 1.2.3 under the rules" in text


def test_concessions_come_first_and_in_full(stage: Review) -> None:
    text = told(stage)
    head = "- **the workshop accepts foot.heavy_enough until 2027-06-01: sandbags lie on it**"
    assert text.index("### Accepted on purpose") < text.index(head) < text.index("### Before cut")


def test_a_design_that_cannot_be_read(reviewed: Callable[..., Review], stage: Review) -> None:
    unread = reviewed("design: Lid\nparts:\n  lid: {kind: gap, least: 30 mn}\n", "lid.yaml")
    text = told(stage, unread)
    assert "\n## lid.yaml\n\n**Not reviewed: one problem.**\n\n- lid.yaml:3:30: " in text
    assert "; found mn; expected " in text
    assert text.endswith(
        "\n---\n\nOne design reviewed, one of them with something to change, "
        "one file not reviewed.\n"
    )


def flat(tokens: list[Token]) -> list[Token]:
    return [each for token in tokens for each in (token, *(token.children or ()))]


def shown(text: str) -> tuple[str, set[str]]:
    """The text that a reader sees, and the kinds of what it is made of."""
    tokens = flat(PARSER.parse(text))
    seen = "".join(each.content for each in tokens if each.type in ("text", "text_special"))
    return seen.replace(JOINER, ""), {each.type for each in tokens}


@settings(max_examples=300, deadline=None)
@given(
    st.text(max_size=30)
    | st.sampled_from(HOSTILE)
    | st.lists(st.sampled_from(HOSTILE)).map("".join)
)
def test_a_marked_text_is_nothing_but_text(hostile: str) -> None:
    """By a parser of CommonMark: in a paragraph, in a list and in a cell."""
    expected = plain(hostile, 2000).strip()
    paragraph = {"paragraph_open", "paragraph_close", "inline", "text", "text_special"}
    seen, kinds = shown(f"x {marked(hostile)}\n")
    assert kinds <= paragraph
    assert seen.removeprefix("x").strip() == expected
    seen, kinds = shown(f"- {marked(hostile)}\n")
    lists = {"bullet_list_open", "bullet_list_close", "list_item_open", "list_item_close"}
    assert kinds <= paragraph | lists
    assert seen.strip() == expected
    tokens = PARSER.parse("\n".join(table(["a", "b"], [[hostile, "next"]])) + "\n")
    cells = [tokens[at + 1] for at, each in enumerate(tokens) if each.type == "td_open"]
    assert [each.content for each in cells[1:]] == ["next"]
    assert {each.type for each in cells[0].children or ()} <= {"text", "text_special"}


@pytest.mark.parametrize(
    ("text", "reference"),
    [
        ("@someone", "@s"),
        ("see #12", "#1"),
        ("!7", "!7"),
        ("http://a.b", "://"),
        ("www.a.b", "ww.a"),
    ],
)
def test_what_a_forge_turns_into_a_link_is_broken_up(text: str, reference: str) -> None:
    assert reference not in marked(text)
    assert marked(text).replace(JOINER, "").replace("\\", "") == text


@pytest.mark.parametrize("hostile", HOSTILE)
def test_no_field_of_a_design_makes_anything_but_text(
    stage: Review, shop: Review, infested: Callable[[Review, str], Review], hostile: str
) -> None:
    for review in (stage, shop):
        usual = {each.type for each in PARSER.parse(told(review))}
        tokens = PARSER.parse(told(infested(review, hostile)))
        assert {each.type for each in tokens} <= usual
        for each in flat(tokens):
            assert each.type not in ("html_inline", "link_open", "image", "em_open", "code_inline")
            if each.type == "html_block":
                assert each.content.split("<summary>")[0].strip() in OURS
