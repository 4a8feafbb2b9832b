// An answer of the engine that is drawn: asked for when what it rests on has changed, the one before shown until it has come.

export class HeldAnswer<T> {
  private basis: unknown[] | undefined;
  private answer: T | undefined;
  /** The newest answer there is, whatever it rests on. */
  get last(): T | undefined {
    return this.answer;
  }
  /** Resolves when the answer asked for last is there. */
  coming: Promise<void> = Promise.resolve();

  /** The newest answer there is. `ask` runs if `basis` differs from the last in any item; `come` when its answer is there. */
  get(basis: unknown[], ask: () => Promise<T>, come: () => void): T | undefined {
    if (this.basis?.length === basis.length && basis.every((x, i) => x === this.basis![i])) return this.answer;
    this.basis = basis;
    this.coming = ask().then((answer) => {
      if (this.basis !== basis) return;
      this.answer = answer;
      come();
    });
    return this.answer;
  }
}
