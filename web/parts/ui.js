// @ts-check
// The page's alphabet: Preact, its hooks and htm in one place, so that the vendored file names are written once.
// `html` makes elements from a template: what is put into it reaches the page as text, never as markup.
export { createContext, Fragment } from "../vendor/preact/preact.js";
export { html, render } from "../vendor/htm/preact.js";
export { useContext, useEffect, useLayoutEffect, useMemo, useRef, useState } from "../vendor/preact/hooks.js";
