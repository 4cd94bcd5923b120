// @ts-check
// What kind of thing each figure is, by the name it has in the journal; whatever is not named here is a length.

/** @typedef {"length" | "angle" | "sides" | "points" | "salvaged" | "studs" | "lean" | "bow" | "fall"} Kind */

/** @type {Record<string, Kind>} */
const KINDS = {
  corner: "angle",
  ceiling_corner: "angle",
  left_corner: "angle",
  right_corner: "angle",
  sides: "sides",
  depth_left: "points",
  depth_right: "points",
  depth_head: "points",
  depth_sill: "points",
  salvaged: "salvaged",
  studs: "studs",
  plumb: "lean",
  bow: "bow",
  fall: "fall",
};

/** @param {string} what @returns {Kind} */
export function kindOf(what) {
  return Object.hasOwn(KINDS, what) ? KINDS[what] : "length";
}
