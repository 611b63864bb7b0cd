/** A kind of thing that is only drawn, to be cut from sheet. */
export interface DrawnKind {
  /** As `fixture.make` of a plan and `build --only` know it: the id of the part that makes it. */
  readonly id: string;
}

type Color = `#${string}`;

/** How a kind is named and colored (sRGB) in the picture of the page: mid tones that stand out from both grounds. */
export interface Look {
  readonly title: string;
  readonly color: Color;
}

/** A kind of solid: all that is to be known of every solid of it. */
export interface SolidKind extends DrawnKind {
  /** What a solid is for, in two or three words: what it says of itself in the files of a build. */
  readonly role: string;
  /**
   * Its place where kinds are listed as the mold is put together: on the page and among the materials of a 3MF. No
   * two have the same; a new kind takes the next number. 3 and 11 are the page's own, for masters and channels.
   */
  readonly order: number;
  /** What it is for at the bench, in one sentence. */
  readonly use: string;
  /** In 3MF and overview, sRGB, so that pieces that belong together are seen at a glance. Our own choice. */
  readonly color: Color;
  /** On the page; of a kind whose two halves are shown and hidden each by itself, one for each. */
  readonly look: Look | { readonly lower: Look; readonly upper: Look };
  /**
   * What it goes with when the mold is opened. `loose` things are lifted half as far as the upper half; of what there
   * is one for each half, the solid's id begins with which.
   */
  readonly side: 'lower' | 'upper' | 'loose' | 'of its half';
  /** Not what is no part of the closed mold, or would hide it. The plug takes the sprue form's place. */
  readonly shownAtFirst: boolean;
  /**
   * What is done first with its file, by which it finds its folder in a build: made as the fixtures are, printed
   * whatever the fixtures are of, or looked at. Halves that are pressed or poured are there to be looked at.
   */
  readonly firstUse: 'make' | 'make where rigid' | 'print' | 'look';
  /** Printed, milled or poured; what is not is there to be looked at. */
  readonly printable: boolean;
  /** A plate: what is engraved on its upper face, and flat otherwise. */
  readonly flat: boolean;
  /** Masters show on it, and are not to be cut through where it is split to fit the bed. */
  readonly showsMasters: boolean;
  /** While the mold stands open: its face, what stands or lies on that, or neither. All else would hide the cavities. */
  readonly inOpenMold: 'face' | 'on the face' | 'no';
  /** Whose material it is of. Halves are of what is pressed or poured, or of the fixtures' where they are rigid. */
  readonly madeOf: 'the fixtures' | 'half' | 'its support' | 'its master';
  /** One solid for all bosses of a size: it stands at each of those it is made from. */
  readonly atBosses: boolean;
}

/** What most things have in common that a mold is made with. */
export const fixture = {
  firstUse: 'make',
  printable: true,
  flat: false,
  showsMasters: false,
  inOpenMold: 'no',
  madeOf: 'the fixtures',
  atBosses: false,
} as const satisfies Partial<SolidKind>;

/** A plate that things are laid out, set or measured with: no part of the closed mold. */
export const plate = {
  ...fixture,
  side: 'lower',
  shownAtFirst: false,
  flat: true,
} as const satisfies Partial<SolidKind>;
