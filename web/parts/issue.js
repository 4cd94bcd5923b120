// @ts-check
// Issuing the list: from then on each piece has its letter for good. It says what it does before it is touched.
import { html } from "./ui.js";
import { Button } from "./controls.js";
import { ask, useNotebook } from "./notebook.js";
import { issueList } from "./write.js";

/** @param {{answer: any}} props the room's pieces as the engine answered them */
export function Issue({ answer }) {
  const { room, journal, services, act } = useNotebook();
  if (!answer.to_issue) return null;
  const issue = async () => {
    const question = { ask: "issue", room: room.id, list: journal.newId() };
    const { answer: found, error } = await ask(services.engine, question);
    if (error) throw error;
    await issueList(journal, found.bodies);
    return found;
  };
  return html`<${Button} kind="main" next=${answer.issue_words} onTouch=${() => act(issue, "The list is issued")}>
    Issue the list<//>`;
}
