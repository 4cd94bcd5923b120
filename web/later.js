// @ts-check
// What the first paint does without: it comes right after it, or when it is to be shown, whichever is sooner.
import { html, useEffect, useState } from "./controls/ui.js";
import { allWords } from "./words/words.js";

/** What brings each of them. @type {(() => Promise<any>)[]} */
const brings = [];

/**
 * A component that is nothing to see until it has come; one that cannot come fails as any other, and is tried again so.
 * Its sentences come before it: a module may say some of them as it begins.
 * @param {() => Promise<any>} find
 */
export function later(find) {
  /** @type {any} */
  let come = null;
  const bring = async () => (come ??= await allWords().then(find));
  brings.push(bring);
  return function Later(/** @type {any} */ props) {
    const [Come, setCome] = useState(() => come);
    const [wrong, setWrong] = useState(/** @type {unknown} */ (null));
    useEffect(() => {
      if (!Come) bring().then((found) => setCome(() => found), setWrong);
    }, []);
    if (wrong) throw wrong;
    return Come ? html`<${Come} ...${props} />` : null;
  };
}

/** Asks for all that are not here yet, so that a signal lost from now on is missed by none. */
export function bringAll() {
  for (const bring of brings) bring().catch(() => {}); // who goes there is told
}
