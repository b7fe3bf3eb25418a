import type { FunctionComponent } from "preact";
import { useEffect, useState } from "preact/hooks";
import { Note } from "./Note";

/** A panel whose script is fetched when it is first shown, so that the page starts without it. */
export function later<P extends object>(load: () => Promise<FunctionComponent<P>>): FunctionComponent<P> {
  let fetched: FunctionComponent<P> | null = null;
  return function Later(props: P) {
    const [refused, setRefused] = useState(false);
    const [, show] = useState(fetched !== null);
    useEffect(() => {
      if (fetched) return;
      load().then(
        (panel) => {
          fetched = panel;
          show(true);
        },
        () => setRefused(true),
      );
    }, []);
    const Panel = fetched;
    if (Panel) return <Panel {...props} />;
    return refused ? <Note tone="bad">This could not be fetched from the server. Load the page again.</Note> : null;
  };
}
