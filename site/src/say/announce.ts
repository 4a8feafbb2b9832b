// Says the result once typing rests: one sentence for who listens, instead of one for each key.

const rest = 1200;
let wanted = '';
let spoken = '';
let timer: ReturnType<typeof setTimeout> | undefined;

/** What the live region holds now; `then` is called when that changes. */
export function announced(text: string, then: () => void): string {
  if (text !== wanted) {
    wanted = text;
    clearTimeout(timer);
    timer = setTimeout(() => {
      spoken = wanted;
      then();
    }, rest);
  }
  return spoken;
}
