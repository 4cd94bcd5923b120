"""The command line: answers on standard output, refusals as one sentence on standard error, status 2."""

import csv
import io
import json
import sys

import pytest
from scantling.cli import main
from scantling.demo_house import house_file, load_demo
from scantling.engine.desk import QUESTIONS
from scantling.engine.questions.written import LISTS

CASE = {"kerf": "1/8", "end_trim": "1/2", "stock": [{"length": "144", "price": "19.98"}], "pieces": ["60", "70", "40"]}


@pytest.fixture
def run(capsys, tmp_path):
    def command(*arguments):
        status = main(["--data", str(tmp_path / "notebook"), *arguments])
        out, err = capsys.readouterr()
        return status, out, err

    return command


@pytest.fixture
def demo(tmp_path):
    load_demo(tmp_path / "notebook")


@pytest.fixture
def write(tmp_path):
    def file(content, name="given.json"):
        path = tmp_path / name
        path.write_bytes(content if isinstance(content, bytes) else json.dumps(content).encode())
        return str(path)

    return file


def refused(answer):
    status, out, err = answer
    assert (status, out) == (2, "")
    assert err.startswith("scantling: ")
    return err


def test_a_sum_is_worked(run):
    assert run("sum", "63 1/4 - 2*(3 1/2 + 3/16)") == (0, '55 7/8"\n', "")


def test_a_sum_may_come_in_pieces_as_the_shell_cuts_it(run):
    assert run("sum", "63", "1/4", "-", "4") == (0, '59 1/4"\n', "")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        pytest.param("63 1/4 / 3", '21 1/16"  (1/48" over the mark)\n', id="off the mark"),
        pytest.param("10 in * 3 in", "30 sq in (5/24 sq ft)\n", id="an area"),
        pytest.param("63 in / 21 in", "3\n", id="a number"),
        pytest.param("5 - 5", '0"\n', id="nothing"),
    ],
)
def test_a_sum_shows_what_it_came_to(text, shown, run):
    assert run("sum", text) == (0, shown, "")


def test_a_sum_that_cannot_be_read_shows_the_place(run):
    first, text, caret = refused(run("sum", "63 1/4 + x")).splitlines()
    assert "x" in first
    assert text == "  63 1/4 + x"
    assert text[caret.index("^")] == "x"


def test_options_may_stand_before_or_after_the_command(run):
    assert run("--json", "sum", "5") == run("sum", "--json", "5")
    assert json.loads(run("sum", "--json", "5")[1])["length"]["exact"] == "5"


def test_one_question_gives_one_answer_and_a_list_a_list(run, write):
    question = {"ask": "read", "text": "63 1/4"}
    status, out, _ = run("ask", write(question))
    assert (status, json.loads(out)["answer"]["length"]["inches"]) == (0, 63.25)
    status, out, _ = run("ask", write([question, question]))
    assert (status, len(json.loads(out))) == (0, 2)


def test_an_answer_that_is_a_refusal_is_status_2_and_the_others_are_still_given(run, write):
    status, out, err = run("ask", write([{"ask": "read", "text": "63"}, {"ask": "read", "text": "x"}]))
    assert (status, err) == (2, "")
    assert [set(answer) for answer in json.loads(out)] == [{"answer"}, {"error"}]


def test_a_question_may_be_about_a_room_of_the_notebook(run, write, demo):
    room = json.loads(run("pieces", "--json")[1])
    status, out, _ = run("ask", write({"ask": "notebook"}))
    assert status == 0
    assert [one["name"] for one in json.loads(out)["answer"]["houses"][0]["rooms"]] == [one["room"] for one in room]


def test_standard_input_is_read_at_a_dash(run, monkeypatch):
    given = io.TextIOWrapper(io.BytesIO('{"ask": "read", "text": "½"}'.encode()))
    monkeypatch.setattr(sys, "stdin", given)
    assert json.loads(run("ask", "-")[1])["answer"]["length"]["exact"] == "1/2"


def test_the_cut_list_names_every_piece_of_every_room(run, demo):
    status, out, err = run("pieces")
    assert (status, err) == (0, "")
    answers = json.loads(run("pieces", "--json")[1])
    assert len(answers) == 3
    for answer in answers:
        of_room = out.split(f"Cut list: {answer['room']}")[1].split("Cut list: ")[0]
        for piece in answer["pieces"]:
            line = next(line for line in of_room.splitlines() if line.split()[:1] == [piece["letter"]])
            assert piece["part_name"] in line
            assert piece["cut"]["shown"] in line


def test_a_room_is_found_by_its_name_in_any_case(run, demo):
    name = json.loads(run("pieces", "--json")[1])[0]["room"]
    status, out, _ = run("pieces", name.upper())
    assert (status, out.splitlines()[0]) == (0, f"Cut list: {name}")


def test_a_room_that_is_not_there_is_refused_with_those_that_are(run, demo):
    assert "“ballroom”" in refused(run("pieces", "ballroom"))
    assert "Sewing room" in refused(run("pieces", "ballroom"))


def test_a_room_in_a_file_needs_no_notebook(run, write):
    walls = [{"id": f"w{n}", "length": ["96"], "corner": {"turn": "inside", "corner": "90"}} for n in range(4)]
    status, out, _ = run("pieces", write({"name": "closet", "closed": True, "standard": {}, "walls": walls}))
    assert status == 0
    assert out.startswith("Cut list: closet\n")
    assert len([line for line in out.splitlines() if "base, wall" in line]) == 4


def test_the_board_plan_says_what_to_buy_what_it_costs_and_that_it_is_proved(run, demo):
    status, out, _ = run("boards")
    assert status == 0
    for room in json.loads(run("boards", "--json")[1]):
        for plan in room["plans"]:
            assert f"{plan['summary']} ${plan['cost']}" in out
            assert plan["proof"] in out


def test_a_board_case_is_answered_as_json(run, write):
    status, out, _ = run("boards", write(CASE))
    answer = json.loads(out)
    assert (status, answer["cost"], answer["proven"]) == (0, "39.96", True)
    assert sorted(piece for board in answer["boards"] for piece in board["pieces"]) == [0, 1, 2]


def test_a_board_case_that_cannot_be_is_refused_in_a_sentence(run, write):
    assert 'Piece 1, 150", is longer' in refused(run("boards", write({**CASE, "pieces": ["150"]})))


def test_the_table_of_pieces_has_a_row_for_each(run, demo):
    rows = list(csv.DictReader(io.StringIO(run("export", "pieces")[1], newline="")))
    pieces = [piece for room in json.loads(run("pieces", "--json")[1]) for piece in room["pieces"]]
    assert [row["letter"] for row in rows] == [piece["letter"] for piece in pieces]
    assert run("pieces", "--csv")[1] == run("export", "pieces")[1]


@pytest.mark.parametrize("what", LISTS)
def test_a_list_of_every_room_is_one_table_under_one_header(run, demo, what):
    table = run("export", what, "--csv")[1]
    heads, *rows = csv.reader(io.StringIO(table, newline=""))
    assert table == run("export", what)[1]
    assert all(len(row) == len(heads) for row in rows)
    assert heads not in rows
    rooms = [room["room"] for room in json.loads(run("export", what, "--json")[1])]
    assert {row[0] for row in rows} <= set(rooms)
    assert len(rooms) == len(json.loads(run("pieces", "--json")[1]))


def test_an_exported_journal_restores_another_notebook(run, demo, tmp_path, write):
    journal = run("export", "journal")[1]
    assert journal.count("\n") == len(json.loads(house_file().read_text())["entries"])
    status, out, _ = run("restore", write(journal.encode()), "--data", str(tmp_path / "other"))
    assert (status, out.split()[0]) == (0, str(journal.count("\n")))
    assert run("export", "journal", "--data", str(tmp_path / "other"))[1] == journal


def test_the_demo_house_is_loaded_once_however_often_it_is_loaded(tmp_path):
    assert load_demo(tmp_path) > 50
    assert load_demo(tmp_path) == 0


@pytest.mark.parametrize("command", [["pieces"], ["boards"], ["export", "journal"], ["export", "pieces"]])
def test_a_notebook_that_is_not_there_is_not_made_by_reading_it(command, run, tmp_path):
    assert "no notebook" in refused(run(*command))
    assert not (tmp_path / "notebook").exists()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ([], "COMMAND"),
        (["plane"], "plane"),
        (["sum"], "text"),
        (["ask", "/no/such/file"], "/no/such/file"),
        (["serve", "--port", "high"], "high"),
        (["export", "money"], "money"),
    ],
)
def test_a_command_given_wrongly_is_refused_in_one_sentence(arguments, said, run):
    err = refused(run(*arguments))
    assert said in err
    assert err.count("\n") == 1


@pytest.mark.parametrize("content", [b"{", b"\xff", b"[" * 100_000], ids=["half", "not utf-8", "deep"])
def test_a_file_that_is_not_json_is_named(content, run, write):
    path = write(content)
    assert path in refused(run("boards", path))


def test_the_help_lists_every_question(capsys):
    with pytest.raises(SystemExit):
        main(["ask", "--help"])
    out = capsys.readouterr().out
    assert all(name in out and question.doc in out for name, question in QUESTIONS.items())


def test_a_proof_is_gone_through_and_told_in_a_sentence(run, write):
    case = write(CASE)
    status, out, _ = run("prove", case)

    assert (status, out) == (0, "It holds: no plan under $39.96 exists, nor one at that price with fewer boards.\n")


def test_a_proof_that_does_not_hold_fails_the_command(run, write):
    answer = json.loads(run("boards", write(CASE))[1])
    answer["proof"]["rules"] = []
    status, out, _ = run("prove", write(CASE), write(answer, "answer.json"))

    assert status == 2
    assert out.startswith("It does not hold")
