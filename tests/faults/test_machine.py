"""Fold and sync as a machine of deeds: Hypothesis looks for the shortest row of them after which notebooks differ."""

import random
import tempfile

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import Bundle, RuleBasedStateMachine, consumes, initialize, invariant, rule
from scantling.engine.notebook import fold
from scantling.store import canonical_text

from tests.faults.days import MEMORY, NOW_MS, ROUNDS_TO_REST, YEAR_MS, Network, notebook_of
from tests.faults.twin import Twin

PHONES = st.integers(0, 2)
HOUSE = "0190aaaa-0000-7000-8000-000000000000"


class Notebooks(RuleBasedStateMachine):
    """Three phones and a laptop. What was written down is remembered apart from them, by id and text."""

    copies = Bundle("copies")
    laptop_copies = Bundle("laptop copies")

    @initialize()
    def begin(self):
        self.folder = tempfile.TemporaryDirectory(dir=MEMORY)
        chance = random.Random(0)
        self.network = Network(chance, self.folder.name)
        self.network.calm = True
        self.phones = [Twin(chance, NOW_MS) for _ in range(3)]
        self.written = {}

    def _note(self, phone):
        self.written.update((entry["id"], canonical_text(entry)) for entry in phone.entries())

    @rule(phone=PHONES, years=st.sampled_from([0, 0, -20, 20, -60]))
    def set_the_clock(self, phone, years):
        self.phones[phone].at_ms = NOW_MS + years * YEAR_MS

    @rule(phone=PHONES, value=st.integers(1, 15), answers=st.booleans())
    def set_a_thickness(self, phone, value, answers):
        known = [entry["id"] for entry in self.phones[phone].entries() if entry["kind"] == "setting"]
        body = {"of": HOUSE, "name": "base.thickness", "value": f"{value}/16"}
        self.phones[phone].write("setting", body, known[-1:] if answers else [])
        self._note(self.phones[phone])

    @rule(phone=PHONES, name=st.sampled_from(["a", "b"]))
    def name_the_house(self, phone, name):
        self.phones[phone].write("house", {"house": HOUSE, "name": name, "built": None})
        self._note(self.phones[phone])

    @rule(phone=PHONES, which=st.integers(0, 30))
    def strike(self, phone, which):
        known = self.phones[phone].entries()
        if known:
            self.phones[phone].write("strike", {"entry": known[which % len(known)]["id"], "why": ""})
            self._note(self.phones[phone])

    @rule(phone=PHONES)
    def share(self, phone):
        assert self.phones[phone].synchronize(self.network.send) is not None

    @rule(phone=PHONES, other=PHONES)
    def carry_a_file(self, phone, other):
        self.phones[other].read_file(self.phones[phone].entries())

    @rule(target=copies, phone=PHONES)
    def copy_a_phone(self, phone):
        return self.phones[phone].copy()

    @rule(copy=copies, phone=PHONES)
    def put_a_copy_on_a_phone(self, copy, phone):
        """Its own, or another's: then there are two of one name."""
        self.phones[phone].put_back(copy)

    @rule(target=laptop_copies)
    def copy_the_laptop(self):
        self.network.copy_aside()
        return len(self.network.copies) - 1

    @rule(copy=consumes(laptop_copies))
    def put_the_laptop_back(self, copy):
        self.network.copies, kept = [self.network.copies[copy]], self.network.copies
        self.network.put_back()
        self.network.copies = kept

    @invariant()
    def no_entry_is_other_than_it_was_written(self):
        for held in (*self.phones, self.network):
            assert all(self.written[entry["id"]] == canonical_text(entry) for entry in held.entries())

    @invariant()
    def the_order_of_arrival_and_repeats_do_not_matter(self):
        for phone in self.phones:
            entries = phone.entries()
            assert notebook_of(entries) == notebook_of([*reversed(entries), *entries])

    @invariant()
    def of_one_setting_the_later_is_used_and_the_others_stand_beside(self):
        for phone in self.phones:
            notebook = fold(phone.entries())
            for used, heads in notebook.settings(HOUSE).values():
                assert used in heads
                assert used.order == max(head.order for head in heads)

    def teardown(self):
        held = {entry["id"] for each in (*self.phones, self.network) for entry in each.entries()}
        for _ in range(ROUNDS_TO_REST):
            requests = [phone.synchronize(self.network.send) for phone in self.phones]
        assert requests == [1, 1, 1]
        kept = self.network.entries()
        assert {entry["id"] for entry in kept} == held
        told = notebook_of(kept)
        assert [notebook_of(phone.entries()) for phone in self.phones] == [told] * 3
        self.network.store.close()
        self.folder.cleanup()


Notebooks.TestCase.settings = settings(stateful_step_count=25, max_examples=40)
TestAnyRowOfDeedsEndsWithNotebooksThatAreEqual = Notebooks.TestCase
