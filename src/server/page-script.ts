/** Header in which a page sends the key that its address held. */
export const KEY_HEADER = 'x-cupbook-key';

/** Letters of a key: 128 bits in base64url. */
const KEY_LETTERS = 22;

/**
 * The script that the server adds to a page while it shows the book; `build` never writes it.
 *
 * It loads the page anew when the book has changed, and changes a key in the address for the cookie that shows the
 * maker's edition.
 *
 * @param folder path of what the server itself answers, ending in `/`
 */
export function pageScript(folder: string): string {
  return `(${inPage.toString()})(${JSON.stringify({ folder, header: KEY_HEADER, letters: KEY_LETTERS })});\n`;
}

/** The element that loads the script into a page of a version. */
export function pageScriptElement(folder: string, version: string): string {
  return `<script src="${folder}page.js" data-version="${version}"></script>`;
}

/** Runs in the page, as its own text: it can use nothing of this file. */
function inPage({ folder, header, letters }: { folder: string; header: string; letters: number }): void {
  const { version } = (document.currentScript as HTMLScriptElement).dataset;
  let events: EventSource | undefined;
  const follow = (): void => {
    events?.close();
    events = undefined;
    // Not in hidden tabs: a browser has but six connections to a server, and the seventh tab would wait for ever.
    if (document.visibilityState !== 'visible') return;
    events = new EventSource(`${folder}changes`);
    events.onmessage = ({ data }) => {
      if (data !== version) location.reload();
    };
  };
  document.addEventListener('visibilitychange', follow);
  addEventListener('pagehide', () => events?.close());
  addEventListener('pageshow', follow);

  const say = (text: string): void => {
    const line = document.createElement('p');
    line.setAttribute('role', 'alert');
    line.textContent = text;
    (document.querySelector('main') ?? document.body).prepend(line);
  };
  const change = async (key: string): Promise<void> => {
    if (key.length !== letters) return say('The code was not read whole. Scan it again.');
    const answer = await fetch(`${folder}key`, { headers: { [header]: key }, cache: 'no-store', redirect: 'error' });
    if (answer.ok) location.reload();
    else say(await answer.text());
  };
  const takeKey = (): void => {
    const [, key] = /^#key=([\w-]*)$/.exec(location.hash) ?? [];
    if (key === undefined) return;
    // Out of the address, before anything else can see it there or keep it.
    history.replaceState(history.state, '', location.pathname + location.search);
    const start = (): void => {
      change(key).catch(() => say('The book did not answer. Scan the code again.'));
    };
    if (document.readyState === 'loading') addEventListener('DOMContentLoaded', start);
    else start();
  };
  takeKey();
  // Where the page of the code is open already, it is not loaded again.
  addEventListener('hashchange', takeKey);
}
