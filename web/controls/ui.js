// @ts-check
// The page's alphabet: Preact, its hooks and htm in one place, so that the vendored file names are written once.
// `html` makes elements from a template: what is put into it reaches the page as text, never as markup.
export { Component, createContext, Fragment } from "../vendor/preact/preact.js";
export { html, render } from "../vendor/htm/preact.js";
export { useContext, useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from "../vendor/preact/hooks.js";
