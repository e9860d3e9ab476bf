/** Data that the build wrote into the page; undefined where the page has none. */
export function pageData<T>(selector: string): T | undefined {
  const text = document.querySelector(selector)?.textContent;
  return text === undefined || text === null ? undefined : (JSON.parse(text) as T);
}

/** Runs a function when a reader has stopped for a moment. */
export function afterPause(run: () => void, milliseconds = 150): () => void {
  let timer: number | undefined;
  return () => {
    window.clearTimeout(timer);
    timer = window.setTimeout(run, milliseconds);
  };
}
