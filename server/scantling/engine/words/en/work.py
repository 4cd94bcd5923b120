"""What is said of the order of work, of supplies, costs and a room's boards."""

TEXTS = {
    "work.no-such-step": "There is no step called {text}: name one of {keys}.",
    "supply.no-bead": "A bead of nothing fills no joint: write its size, such as 1/8.",
    "supply.too-many-holes": "{name}: that is more than {most} of them: read its length and spacing again.",
    "supply.too-short": "{name}: {length} reaches {bite} into the stud, and {wanted} is wanted: take {need} or longer.",
    "supply.no-length": "{name}: no nail of the lengths given is as long as {need}: write a longer one.",
    "cost.no-price": "{name} has no price: write what it costs, such as 19.98.",
    "cost.part-priced": "{name} is told without what has no price: {what}.",
    "cost.no-rooms": "No room measured yet has a cost: measure and plan one, and the next can be told from it.",
}
