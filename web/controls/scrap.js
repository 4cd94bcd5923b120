// @ts-check
// Scraps: what is handy to remember in this browser and no loss to forget. A browser may refuse to keep anything, be
// full, or hand back what it was never given; the page works the same without.

/** @param {string} name @returns {string | null} */
export function recall(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** @param {string} name @param {string} text */
export function remember(name, text) {
  try {
    localStorage.setItem(name, text);
  } catch {
    // No room, or not allowed: it will be asked again.
  }
}
