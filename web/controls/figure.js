// @ts-check
// Figures: a length as it is drawn on paper, whole number, stacked fraction, small unit. It takes the engine's text apart
// to set it; it never works anything out.
import { html } from "./ui.js";
import { say } from "../words/words.js";

/** Millimeters, and feet that inches follow. */
const METRIC = /^(-?)([\d.]+) mm$/;
const FEET = /^(-?)(\d+)' (\d+)(?: (\d+)\/(\d+))?"$/;
const INCHES = /^(-?)(\d*)(?:(?:^|\s|(?<=-))(\d+)\/(\d+))?"?$/;

/** A length inside running text: 1/32 in, not 1/32". @param {string} shown */
export function inWords(shown) {
  return /^[\d /]+"$/.test(shown) ? say("length-inches", { length: shown.replace('"', "") }) : shown;
}

/**
 * The pieces that a figure is set from, or null for a text that is no plain length.
 * @param {string} shown the engine's text, such as 63 1/4", or what has been typed so far
 */
export function splitFigure(shown) {
  const metric = METRIC.exec(shown.trim());
  if (metric) return { sign: metric[1] ? "−" : "", whole: metric[2], unit: "mm" };
  const feet = FEET.exec(shown.trim());
  if (feet) return { sign: feet[1] ? "−" : "", feet: feet[2], whole: feet[3], above: feet[4], below: feet[5], unit: "in" };
  const found = INCHES.exec(shown.trim());
  if (!found || (!found[2] && !found[3])) return null;
  return { sign: found[1] ? "−" : "", whole: found[2], above: found[3], below: found[4], unit: "in" };
}

/**
 * @param {{shown?: string | null, size?: "row" | "big" | "huge", unit?: boolean, lean?: string}} props
 */
export function Figure({ shown, size = "row", unit = true, lean = "" }) {
  const parts = splitFigure(shown ?? "");
  if (!parts) return html`<span class="figure figure-${size}">${shown}</span>`;
  const [foot, name] = [say("unit-ft"), say(`unit-${parts.unit}`)];
  const feet = parts.feet ? `${parts.feet} ${foot} ` : "";
  const said = `${parts.sign}${feet}${parts.whole}${parts.above ? ` ${parts.above}/${parts.below}` : ""}${unit ? ` ${name}` : ""} ${lean}`;
  // Millimeters have more digits than inches: as large as they can be, and the unit still on the screen.
  const large = parts.unit === "mm" && size === "huge" ? "big" : size;
  return html`<span class="figure figure-${large}">
    <span class="heard">${said.trim()}</span>
    <span class="seen" aria-hidden="true">
      ${parts.sign}${parts.feet ? html`${parts.feet}<span class="unit unit-first">${foot}</span>` : null}${parts.whole}${
        parts.above ? html`<span class="fraction"><span>${parts.above}</span><span>${parts.below}</span></span>` : null
      }${unit ? html`<span class="unit">${name}</span>` : null}${lean ? html`<span class="lean">${lean}</span>` : null}
    </span>
  </span>`;
}
