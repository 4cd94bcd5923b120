"""Search: the walk over shopping lists, each one settled by the cheapest means that settles it.

Cheap rules first, then a quick packing; only when that does not tell, the price program, the menus and the long
searches. Lists that resist are put aside, so that the walk goes on, and taken up again with more patience while steps
remain. Nothing here depends on the clock but where it stops.
"""

from __future__ import annotations

from bisect import bisect_right

from scantling.engine.boards.case.case import Proof, Rule
from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.case.rules import (
    derive_count_rules,
    derive_least_cents,
    derive_size_rule,
    derive_size_rules,
    derive_spare,
    derive_total,
    passes,
)
from scantling.engine.boards.search.columns import FINENESS, Columns, derive_rough_price
from scantling.engine.boards.search.cover import cover, cover_freely
from scantling.engine.boards.search.greedy import derive_greedy, rank
from scantling.engine.boards.search.lift import Refuter, derive_up_to
from scantling.engine.boards.search.renew import PIECES_AT_ONCE, Renewal, count_kinds, derive_part, translate
from scantling.engine.boards.search.rounding import round_off
from scantling.engine.boards.ways.lists import Boards, ListRank, ListWalk
from scantling.engine.boards.ways.menu import MENU_WAYS, Menu, Menus
from scantling.engine.boards.ways.packing import Packed, Way, pack
from scantling.engine.boards.ways.steps import Steps

QUICK = 1_400
"""Steps for a first try at a list: about as long as it takes to find a packing that is easy to find."""

WIDTHS = (200, 800, 3_200, 12_800)
"""How much of a menu is tried: a short one leads straight to what it holds, a long one holds more."""

DIVES = 8
DIVE_SHARE = 4
"""How often a dive starts anew, and the share of all steps after which it must have found something."""

ROUNDS = 8
ROUND_SHARE = 6
"""How often the price program's plan is brought to whole boards at most, and the share of all steps for it."""

MANY = 32
RENEW = 3_000
RENEW_AT_LEAST = 100
RENEW_SHARE = 8
RENEW_MOST = 100_000
RENEW_DEAR = 2
DEAR = 6
"""More pieces than are planned at once; steps for planning a few boards anew, at most and at least; the share of all
steps for doing so at every round, and how many at first, twice as many every time. Where the price program would take
more than its share (`DEAR`), planning anew comes first, and for longer."""

PATIENT = 8
"""The round from which the walk and the lists that resist are no longer kept from each other's steps."""

UNKNOWN = Packed(None, certain=False)
REFUTED = Packed(None, certain=True)


class Search:
    """One search for the best ways to cut one grid. `best` is the best plan so far, None when none is known."""

    def __init__(self, grid: Grid, steps: Steps, known: tuple[Way, ...] | None = None) -> None:
        """`known` is a plan to be improved on, in place of a greedy one."""
        self._grid = grid
        self._steps = steps
        self._is_many = sum(grid.demand) > MANY
        self._renewal = Renewal()
        self._size_rule = derive_size_rule(grid)
        self._rules: dict[Rule, int] = {}
        self._used = [self._size_rule]
        self._walk = ListWalk(grid, self._used, steps)
        self._price_rule: Rule | None = None
        self._columns: Columns | None = None
        self._prepared = False
        self._menus: Menus | None = None
        self._refuter: Refuter | None = None
        self._searched: list[Boards] = []
        self._resisting: list[tuple[ListRank, Boards]] = []
        steps.take(len(grid.sizes))
        self.best = known or derive_greedy(grid, steps)
        if self.best is not None:
            self._walk.ceiling = rank(grid, self.best)

    def run(self) -> None:
        """Find the best plan, or the best within the steps."""
        effort = 0
        while not self._steps.out and not self._is_done:
            wait = self._steps.limit >> (effort + 1) if effort < PATIENT else 0
            self._go_on(self._steps.limit - wait)
            effort += 1
            if not self._is_done:
                self._insist(effort)

    @property
    def _is_done(self) -> bool:
        return self._walk.is_over and not self._resisting

    @property
    def floor(self) -> ListRank | None:
        """No plan ranks lower than this; None when there is no plan at all."""
        floors = [place for place, _ in self._resisting]
        if self._walk.floor is not None:
            # A walk cut short may not have come to see what the price rule says of the lists still to come.
            floors.append(max(self._walk.floor, (self._least_cents(), 0)))
        if self.best is not None:
            floors.append(rank(self._grid, self.best))
        return min(floors, default=None)

    def _least_cents(self) -> int:
        return (derive_least_cents(self._price_rule, self._grid) or 0) if self._price_rule else 0

    @property
    def proof(self) -> Proof:
        """The rules that were needed, and the lists that were tried out in full."""
        return Proof(tuple(self._used), tuple(self._searched))

    def _go_on(self, stop: int) -> None:
        """Walk until a list is packed, none is left, or the steps up to `stop` are used."""
        for place, boards in self._walk:
            packed = self._settle(boards)
            if packed.ways is not None:
                self._accept(packed.ways)
            elif not packed.certain:
                self._resisting.append((place, boards))
            if packed.ways is not None or self._steps.used >= stop:
                return

    def _insist(self, effort: int) -> None:
        """Take up the lists that resisted, the best first, with more patience."""
        if self._resisting:
            self._dive(effort)
        self._renew(min(self._steps.limit // RENEW_SHARE, RENEW_MOST << effort))
        for place, boards in list(self._resisting):
            if self._steps.out:
                return
            if (place, boards) not in self._resisting:  # a better plan was found meanwhile
                continue
            packed = REFUTED if self._fails_a_rule(boards) else self._note(boards, self._try(boards, effort))
            if packed.ways is not None:
                self._accept(packed.ways)
            elif packed.certain:
                self._resisting.remove((place, boards))

    def _settle(self, boards: Boards) -> Packed:
        """Decide one list, with no more than a fair effort."""
        if self._fails_a_rule(boards):
            return REFUTED
        if not self._prepared:
            packed = pack(self._grid, boards, [self._size_rule], self._steps, 2 * QUICK)
            if packed.ways is not None or packed.certain:
                return self._note(boards, packed)
            self._prepare()
            if self._fails_a_rule(boards):
                return REFUTED
        return self._note(boards, self._try(boards, 0))

    def _note(self, boards: Boards, packed: Packed) -> Packed:
        """Remember a list that was tried out in full; one that a rule refutes needs no remembering."""
        if packed.ways is None and packed.certain and packed is not REFUTED:
            self._searched.append(boards)
        return packed

    def _accept(self, ways: tuple[Way, ...]) -> None:
        place = rank(self._grid, ways)
        if self.best is None or place < rank(self._grid, self.best):
            self.best = ways
            self._walk.ceiling = place
            self._resisting = [held for held in self._resisting if held[0] < place]

    def _fails_a_rule(self, boards: Boards) -> bool:
        cost = self._cost(boards)
        if not self._rules:
            self._derive_rules()
        self._steps.take(len(self._rules))
        for rule, need in self._rules.items():
            if not passes(rule, need, boards) and (rule.up_to is None or cost <= rule.up_to):
                if rule not in self._used:
                    self._add(rule)
                return True
        return False

    def _derive_rules(self) -> None:
        """The rules that are tried on every list: many, and not wanted where the walk is over before its first."""
        rules = (*derive_size_rules(self._grid), *derive_count_rules(self._grid))
        self._rules = {rule: derive_total(rule, self._grid) for rule in rules}
        self._steps.take(len(self._grid.sizes) * len(rules) // 4)

    def _add(self, rule: Rule) -> None:
        self._rules[rule] = derive_total(rule, self._grid)
        self._used.append(rule)
        self._walk.add(rule)

    def _cost(self, boards: Boards) -> int:
        return sum([price * count for price, count in zip(self._grid.price, boards, strict=True)])

    def _prepare(self) -> None:
        """Cheap means do not suffice: derive the price rule, and plans that come near it."""
        self._prepared = True
        limit = self._steps.limit
        kinds, dear = len(self._grid.sizes), len(self._grid.sizes) > _most_kinds(limit // DEAR)
        if dear:
            self._renew(limit // RENEW_DEAR)
        if kinds > _most_kinds(limit // 3):
            self._price_rule = derive_rough_price(self._grid, _most_kinds(limit // 4), self._steps, limit // 4)
        else:
            self._columns = Columns(self._grid, self._steps, self.best or ())
            self._price_rule = self._columns.price(limit // 2)
        if self._price_rule is not None:
            self._add(self._price_rule)
            self._menus = Menus(self._grid, self._price_rule, self._steps)
            stop = self._steps.used + limit // ROUND_SHARE
            for turn in range(ROUNDS):
                if self._steps.used < stop:
                    self._round(turn)
            self._renew(min(limit // RENEW_SHARE, RENEW_MOST))
            if not dear:
                self._dive(0)

    def _renew(self, allowance: int) -> None:
        """Plan a few boards of the best plan anew, again and again, as long as the allowance lasts."""
        stop = min(self._steps.limit, self._steps.used + allowance)
        while self._is_many and self.best is not None and self._steps.used < stop and not self._steps.out:
            if rank(self._grid, self.best)[0] <= self._least_cents():
                return
            self._steps.take(RENEW_AT_LEAST)
            chosen, kept = self._renewal.choose(self._grid, self.best)
            if not kept:
                return
            part, kinds = derive_part(self._grid, count_kinds(self._grid, chosen), kept)
            places = {kind: place for place, kind in enumerate(kinds)}
            known = tuple([(stock, tuple([places[kind] for kind in way])) for stock, way in chosen])
            steps = self._steps.part(RENEW)
            search = Search(part, steps, known)
            search.run()
            self._steps.close(steps)
            if search.best is not None and search.best is not known:
                self._accept((*kept, *translate(search.best, kinds)))
            else:
                gathered = self._renewal.gather(part, known, self._steps)
                if gathered is not None:
                    self.best = (*kept, *translate(gathered, kinds))

    def _round(self, turn: int) -> None:
        """Bring the price program's plan to whole boards, and plan the last pieces at once."""
        if self._columns is None or sum(self._grid.demand) <= PIECES_AT_ONCE:
            return
        ways, left = round_off(self._columns.task, turn, PIECES_AT_ONCE, self._steps)
        if not any(left):
            self._accept(ways)
            return
        part, kinds = derive_part(self._grid, left, ways)
        steps = self._steps.part(RENEW)
        search = Search(part, steps)
        search.run()
        self._steps.close(steps)
        if search.best is not None:
            self._accept((*ways, *translate(search.best, kinds)))

    def _menu_for(self, spare: int, effort: int) -> Menu | None:
        return self._menus.reach_to(spare, effort, self._spare_below_ceiling()) if self._menus else None

    def _dive(self, effort: int) -> None:
        """Look for better plans anywhere, as long as that pays; from a longer menu when a short one gives nothing."""
        share = self._steps.limit // DIVE_SHARE
        stop = self._steps.used + share
        menu = self._menu_for(0, effort)
        turn = effort * DIVES
        last = turn + (DIVES >> min(effort, 2))
        while menu is not None and turn < last and self._steps.used < stop and not self._steps.out:
            if self._dive_once(menu, turn):
                last, stop = turn + DIVES, self._steps.used + share
            elif not effort and turn == 1 and self._menus is not None and len(menu.ways) < MENU_WAYS:
                menu = self._menus.longer(menu)
            turn += 1

    def _dive_once(self, menu: Menu, turn: int) -> bool:
        found = False
        for width in WIDTHS:
            ceiling, spare = self._walk.ceiling or (1 << 60, 1 << 30), self._spare_below_ceiling()
            ways = cover_freely(self._grid, menu, ceiling, spare, self._steps, QUICK, width, turn)
            if ways is not None:
                self._accept(ways)
                found = True
            if width >= len(menu.ways):
                break
        return found

    def _spare_below_ceiling(self) -> int:
        """Points by the price rule that a plan may waste and still be better than the best."""
        if self._price_rule is None:
            return 0
        if self._walk.ceiling is None:
            return self._rules[self._price_rule] // 50
        return FINENESS * (self._walk.ceiling[0] - self._least_cents())

    def _try(self, boards: Boards, effort: int) -> Packed:
        """Refute the list, cover it from a menu, or pack it; twice the patience with every unit of effort."""
        spare = self._spare(boards)
        menu = self._menu_for(spare, effort)
        packed = UNKNOWN
        if menu is not None:
            if self._refute(boards, menu if menu.reach >= spare else None):
                return REFUTED
            packed = self._cover(boards, menu, spare, effort)
        if packed.ways is None and not packed.certain and (menu is None or effort or self._is_full(boards)):
            packed = pack(self._grid, boards, [self._size_rule], self._steps, 2 * QUICK << effort, effort)
        return packed

    def _cover(self, boards: Boards, menu: Menu, spare: int, effort: int) -> Packed:
        """At first only from as much of the menu as the list can use at all; later from less of it, too."""
        reached = bisect_right(menu.wastes, spare)
        packed = UNKNOWN
        for width in WIDTHS:
            if width >= reached or effort:
                rules, allowance = [self._size_rule, menu.rule], 4 * QUICK << effort
                packed = cover(self._grid, boards, menu, rules, self._steps, allowance, width, effort)
                if packed.ways is not None or packed.certain or width >= reached:
                    break
        return packed

    def _refute(self, boards: Boards, menu: Menu | None) -> bool:
        """Add a rule that these boards do not pass, if there is one: from the menu, if that holds all they can use."""
        refuter = self._refuter_for(boards, menu)
        rule = refuter.refute(boards, self._steps.limit >> 3) if refuter else None
        if rule is not None:
            self._add(rule)
        return rule is not None

    def _refuter_for(self, boards: Boards, menu: Menu | None) -> Refuter | None:
        held = self._refuter
        if self._columns is None or self._walk.ceiling is None:
            return None
        if menu is None:
            if held is None or held.up_to is not None:
                self._refuter = Refuter(self._columns.task, self._steps)
        elif held is None or held.up_to is None or held.up_to < self._cost(boards):
            up_to = derive_up_to(self._grid, menu, self._cost(boards), self._walk.ceiling[0])
            if derive_spare(menu.rule, self._grid, up_to) > menu.reach:
                return None
            self._refuter = Refuter(self._columns.task, self._steps, menu, up_to)
        return self._refuter

    def _is_full(self, boards: Boards) -> bool:
        """Whether the boards have so little length to spare that packing by least waste is worth a try at once."""
        need = self._rules[self._size_rule]
        room = sum([most * count for most, count in zip(self._size_rule.most, boards, strict=True)])
        return room - need < need // 250

    def _spare(self, boards: Boards) -> int:
        """Points by the price rule that the boards can hold beyond what the pieces need."""
        rule = self._price_rule
        if rule is None:
            return 0
        return sum([most * count for most, count in zip(rule.most, boards, strict=True)]) - self._rules[rule]


def _most_kinds(allowance: int) -> int:
    """How many kinds a price program can have to be solved in so many steps, or so: seen to grow like their cube."""
    kinds = 1
    while kinds**3 * 3 // 5 < allowance:
        kinds += 1
    return kinds
