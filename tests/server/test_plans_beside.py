"""A long plan is made beside everything else: who reads or writes meanwhile does not wait for it."""

import threading

import pytest
from scantling.engine.desk import Desk
from scantling.engine.questions import QUESTIONS
from scantling.laptop import LONG, PLANS_AT_ONCE, Laptop, LaptopError

PATIENCE = 20


@pytest.fixture
def plans(monkeypatch):
    """Plans that last until they are let go; `begun` counts those that a desk has in hand."""
    begun, over = threading.Semaphore(0), threading.Event()
    answer = Desk.answer

    def hold(desk, question):
        if question["ask"] in LONG:
            begun.release()
            assert over.wait(PATIENCE)
        return answer(desk, question)

    monkeypatch.setattr(Desk, "answer", hold)
    yield begun, over
    over.set()


def start_plans(laptop, count):
    threads = [threading.Thread(target=laptop.answer, args=({"ask": "boards"},), daemon=True) for _ in range(count)]
    for thread in threads:
        thread.start()
    return threads


def test_reading_and_writing_go_on_while_a_plan_is_made(store, plans):
    begun, over = plans
    laptop = Laptop(store)
    threads = start_plans(laptop, 1)
    assert begun.acquire(timeout=PATIENCE)
    done = threading.Event()

    def work():
        laptop.write("house", {"house": "0190aaaa-0001-7000-8000-000000000001", "name": "a house", "built": None})
        assert [house["name"] for house in laptop.answer({"ask": "notebook"})["answer"]["houses"]] == ["a house"]
        done.set()

    threading.Thread(target=work, daemon=True).start()
    assert done.wait(PATIENCE / 2), "it waited for the plan"
    over.set()
    for thread in threads:
        thread.join(PATIENCE)


def test_more_plans_than_places_are_refused_and_not_left_to_hold_every_thread(store, plans):
    begun, over = plans
    laptop = Laptop(store)
    threads = start_plans(laptop, PLANS_AT_ONCE)
    assert begun.acquire(timeout=PATIENCE)
    while laptop._places._value:
        threading.Event().wait(0.01)
    with pytest.raises(LaptopError) as refused:
        laptop.answer_text('[{"ask": "read", "text": "1"}, {"ask": "boards"}]')
    assert refused.value.key == "too-many-plans"
    over.set()
    for thread in threads:
        thread.join(PATIENCE)
    assert "error" in laptop.answer({"ask": "boards"})


def test_every_question_that_may_take_long_is_one_that_there_is():
    assert QUESTIONS.keys() >= LONG
