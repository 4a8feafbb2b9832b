// Two windows that keep the same cases: what each did since they last agreed is put together, and nothing of either is lost.

/** A case as far as telling its versions apart goes. */
export interface Version {
  id: string;
  /** Another with each change. */
  version: string;
}

export type Taken<Mine, Theirs> =
  | { take: 'mine'; mine: Mine }
  /** Theirs, in the place of mine. */
  | { take: 'theirs'; mine?: Mine; theirs: Theirs }
  /** Both were changed: theirs becomes a case of its own. */
  | { take: 'apart'; theirs: Theirs };

/** `agreed`: the version of each case, by its id, that both sides last knew. */
export function merge<Mine extends Version, Theirs extends Version>(
  agreed: ReadonlyMap<string, string>,
  mine: readonly Mine[],
  theirs: readonly Theirs[],
): Taken<Mine, Theirs>[] {
  const stays = (v: Version): boolean => agreed.get(v.id) === v.version;
  const there = new Map(theirs.map((t) => [t.id, t]));
  const here = new Set(mine.map((m) => m.id));
  const own = mine.flatMap((m): Taken<Mine, Theirs>[] => {
    const t = there.get(m.id);
    // Closed there: it goes, unless it was changed here.
    if (!t) return agreed.has(m.id) && stays(m) ? [] : [{ take: 'mine', mine: m }];
    if (t.version === m.version || stays(t)) return [{ take: 'mine', mine: m }];
    if (stays(m)) return [{ take: 'theirs', mine: m, theirs: t }];
    return [
      { take: 'mine', mine: m },
      { take: 'apart', theirs: t },
    ];
  });
  // Closed here: it goes, unless it was changed there.
  const added = theirs.filter((t) => !here.has(t.id) && !(agreed.has(t.id) && stays(t)));
  return [...own, ...added.map((t): Taken<Mine, Theirs> => ({ take: 'theirs', theirs: t }))];
}
