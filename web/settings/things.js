// @ts-check
// What one thing in the way may have otherwise than its room: stairs their rake, any other its toe kick and its ends.

/** @type {Record<string, import("./trims.js").Group>} */
export const THINGS = {
  stairs: {
    title: "Rake of the stairs",
    picks: [
      [
        "thing.rises",
        "The stairs rise",
        [
          ["left", "to the left"],
          ["right", "to the right"],
        ],
      ],
    ],
    rows: [["thing.rake", "Rake", "degrees from level, such as 37, or none: then the base ends square", "plain"]],
  },
  toe: {
    title: "Toe kick",
    rows: [
      ["toe.height", "Toe kick, height", "from the floor to where it comes forward; none if there is none"],
      ["toe.depth", "Toe kick, depth", "how far it is set back from the face"],
    ],
  },
  at: {
    title: "Boards that end at it",
    picks: [
      [
        "thing.end",
        "Their ends",
        [
          ["square", "cut square"],
          ["scribed", "scribed to it"],
        ],
      ],
    ],
    rows: [["thing.clearance", "Kept clear of it", "between a board's end and it, for the caulk"]],
  },
};
