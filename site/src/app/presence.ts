// Whether somebody is at the page: a sign of a person, or that the page was looked at for a while. Until then an empty page fetches neither
// engine nor rules; where a browser is set to save data, only a sign counts.

const signs = ['pointermove', 'pointerdown', 'keydown', 'focusin', 'scroll', 'paste', 'dragenter'];
/** Time enough to see what the page is, in milliseconds. */
const aWhile = 3_000;

interface Line {
  saveData?: boolean;
}

export async function somebody(): Promise<void> {
  const { connection } = navigator as Navigator & { connection?: Line };
  const over = new AbortController();
  const { signal } = over;
  await new Promise<void>((done) => {
    for (const sign of signs) window.addEventListener(sign, () => done(), { passive: true, signal });
    if (connection?.saveData) return;
    let looking: ReturnType<typeof setTimeout> | undefined;
    const look = (): void => {
      clearTimeout(looking);
      if (document.visibilityState === 'visible') looking = setTimeout(done, aWhile);
    };
    document.addEventListener('visibilitychange', look, { signal });
    look();
  });
  over.abort();
}
