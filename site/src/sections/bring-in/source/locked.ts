/** The file wants a password: none was given, or a wrong one. */
export class Locked extends Error {
  constructor(readonly wrong: boolean) {
    super('locked');
  }
}
