// What can be wrong with what was brought in. Each has its sentence in the wording, under page.bring.trouble, with the next best way.

export type TroubleKind =
  | 'empty'
  | 'nothingFound'
  | 'unknownKind'
  | 'wordFile'
  | 'spreadsheet'
  | 'tooLarge'
  | 'severalFiles'
  | 'notAPicture'
  | 'noPicturesHere'
  | 'noPdfHere'
  | 'noWords'
  | 'brokenPdf'
  | 'lockedPdf'
  | 'notLoaded';

export class Trouble extends Error {
  constructor(readonly kind: TroubleKind) {
    super(kind);
  }
}
