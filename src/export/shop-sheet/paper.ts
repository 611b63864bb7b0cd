import { mmPerInch } from '../../geometry/index.ts';
import type { FontFiles } from './fonts.ts';

/** Sizes in mm: ISO 216, and ANSI/ASME Y14.1 A (Letter). */
const paperSizes = { A4: [210, 297], Letter: [215.9, 279.4] } as const;
export type PaperName = keyof typeof paperSizes;

const pointsPerMm = 72 / mmPerInch;
const margin = 12;
/** Room at the head of a page for its title, at the foot for its number, mm. */
const head = 9;
const foot = 7;

export type Align = 'left' | 'right';

export interface Column {
  readonly title: string;
  /** Share of the page's width. */
  readonly share: number;
  readonly align?: Align;
}

export interface TextStyle {
  readonly size?: number;
  readonly bold?: boolean;
  readonly gray?: number;
}

/** Size of running text, mm (8.5 pt). */
const plainSize = 3;
/** Where a line may end: not between a number and its unit. */
const breaks =
  / (?!(?<=\d )(?:[cm]?m[23]?|in[23]?|oz|oz\.in|g|kg|g\.mm|lb|lbf|k?N|psi|[kM]Pa|[CFK]|deg|rpm|%|min|ft\/s|m\/s)(?![\w/]))/;
const lineHeight = 1.35;
const cellPad = 1;

/**
 * Sheets of paper written from top to bottom, in mm from the upper left corner of the page. `y` is where the next
 * thing goes; what finds no room begins a new page.
 */
export class Paper {
  y = 0;
  readonly left = margin;
  readonly top = margin + head;
  /** Whether the page that is written on lies on its long side. */
  private turned = false;

  constructor(
    readonly pen: PDFKit.PDFDocument,
    readonly size: PaperName,
    private readonly heading: string,
    fonts: FontFiles,
  ) {
    pen.registerFont('plain', fonts.plain);
    pen.registerFont('bold', fonts.bold);
  }

  get right(): number {
    return this.whole(this.turned)[0] - margin;
  }

  get bottom(): number {
    return this.whole(this.turned)[1] - margin - foot;
  }

  get width(): number {
    return this.right - this.left;
  }

  /** What a page leaves to be written on, between its head and its foot. */
  free(turned: boolean): { readonly width: number; readonly height: number } {
    const [width, height] = this.whole(turned);
    return { width: width - 2 * margin, height: height - margin - foot - this.top };
  }

  private whole(turned: boolean): readonly [number, number] {
    const [short, long] = paperSizes[this.size];
    return turned ? [long, short] : [short, long];
  }

  /** Takes up a page that was written before. */
  backTo(page: number): void {
    this.pen.switchToPage(page);
    this.turned = this.pen.page.width > this.pen.page.height;
  }

  /** Begins a page under a title of its own. */
  page(title: string, turned = false): void {
    this.turned = turned;
    const [width, height] = this.whole(turned);
    this.pen.addPage({ size: [width * pointsPerMm, height * pointsPerMm], margin: 0 });
    this.pen.scale(pointsPerMm);
    const [large, small] = [
      { size: 4.6, bold: true },
      { size: 2.8, gray: 0.35 },
    ];
    // What the title leaves belongs to the heading, and that is never less than two fifths.
    const named = this.fitted(title, 0.6 * this.width - 4, large);
    const room = this.width - this.widthOf(named, large) - 4;
    this.write(named, this.left, margin, large);
    this.write(this.fitted(this.heading, room, small), this.right, margin + 1.2, small, 'right');
    this.rule(this.left, margin + head - 2, this.right, margin + head - 2, 0.3);
    this.y = this.top;
  }

  /** Makes sure of `height` mm; begins a new page of the given title where they are not left. */
  room(height: number, title: string): void {
    if (this.y + height > this.bottom) this.page(title);
  }

  /** One line of text, its upper left (or upper right) corner at (x, y). */
  write(text: string, x: number, y: number, style: TextStyle = {}, align: Align = 'left'): void {
    this.style(style);
    const from = align === 'left' ? x : x - this.pen.widthOfString(text);
    this.pen.text(text, from, y, { lineBreak: false });
  }

  /** The text, or where it is wider than `width` its beginning and its end, which tells numbered names apart. */
  fitted(text: string, width: number, style: TextStyle = {}): string {
    if (this.widthOf(text, style) <= width) return text;
    const letters = [...text];
    const cut = (kept: number): string =>
      `${letters.slice(0, Math.ceil(kept / 2)).join('')}…${letters.slice(letters.length - Math.floor(kept / 2)).join('')}`;
    let kept = letters.length - 1;
    while (kept > 0 && this.widthOf(cut(kept), style) > width) kept--;
    return cut(kept);
  }

  widthOf(text: string, style: TextStyle = {}): number {
    this.style(style);
    return this.pen.widthOfString(text);
  }

  /** Text broken into lines of a width; gives their height. */
  wrap(text: string, x: number, y: number, width: number, style: TextStyle = {}): number {
    const lines = this.linesOf(text, width, style);
    const step = this.step(style);
    lines.forEach((line, i) => {
      this.write(line, x, y + i * step, style);
    });
    return lines.length * step;
  }

  /** A small heading within a page. */
  section(title: string, pageTitle: string, keep = 20): void {
    this.room(keep, pageTitle);
    this.write(title, this.left, this.y, { size: 3.6, bold: true });
    this.y += 6;
  }

  /** A paragraph over the whole width. */
  paragraph(text: string, pageTitle: string, style: TextStyle = {}): void {
    const height = this.linesOf(text, this.width, style).length * this.step(style);
    this.room(height, pageTitle);
    this.y += this.wrap(text, this.left, this.y, this.width, style) + 2;
  }

  /** A table; its head is repeated on each page it runs over. */
  table(columns: readonly Column[], rows: readonly (readonly string[])[], pageTitle: string): void {
    const titles = columns.map(({ title }) => title);
    const bold: TextStyle = { bold: true, size: 2.7 };
    const whole = this.rowHeight(columns, titles, bold);
    this.room(whole + 8, pageTitle);
    this.row(columns, titles, bold);
    for (const cells of rows) {
      if (this.y + this.rowHeight(columns, cells) > this.bottom) {
        this.page(pageTitle);
        this.row(columns, titles, bold);
      }
      this.row(columns, cells);
    }
    this.y += 3;
  }

  rule(x1: number, y1: number, x2: number, y2: number, width = 0.15, gray = 0): void {
    this.pen.lineWidth(width).strokeColor(shade(gray)).moveTo(x1, y1).lineTo(x2, y2).stroke();
  }

  private row(columns: readonly Column[], cells: readonly string[], style: TextStyle = { size: 2.7 }): void {
    const height = this.rowHeight(columns, cells, style);
    let x = this.left;
    columns.forEach((column, i) => {
      const width = column.share * this.width;
      const lines = this.linesOf(cells[i] ?? '', width - 2 * cellPad, style);
      const at = column.align === 'right' ? x + width - cellPad : x + cellPad;
      lines.forEach((line, k) => {
        this.write(line, at, this.y + cellPad + k * this.step(style), style, column.align);
      });
      x += width;
    });
    this.y += height;
    this.rule(this.left, this.y, this.right, this.y, style.bold ? 0.25 : 0.1, style.bold ? 0 : 0.6);
  }

  private rowHeight(columns: readonly Column[], cells: readonly string[], style: TextStyle = { size: 2.7 }) {
    const counts = columns.map(
      ({ share }, i) => this.linesOf(cells[i] ?? '', share * this.width - 2 * cellPad, style).length,
    );
    return Math.max(1, ...counts) * this.step(style) + cellPad;
  }

  private linesOf(text: string, width: number, style: TextStyle): string[] {
    this.style(style);
    const lines: string[] = [];
    for (const paragraph of text.split('\n')) {
      let line = '';
      for (const word of paragraph.split(breaks).flatMap((one) => this.pieces(one, width))) {
        const longer = line === '' ? word : `${line} ${word}`;
        if (line !== '' && this.pen.widthOfString(longer) > width) {
          lines.push(line);
          line = word;
        } else line = longer;
      }
      lines.push(line);
    }
    return lines;
  }

  /** A word too long for a line is broken after a dash or slash, else anywhere. */
  private pieces(word: string, width: number): string[] {
    const pieces: string[] = [];
    let piece = '';
    for (const letter of word) {
      if (piece !== '' && this.pen.widthOfString(piece + letter) > width) {
        const whole = piece.match(/^.*[-/]/)?.[0] ?? piece;
        pieces.push(whole);
        piece = piece.slice(whole.length);
      }
      piece += letter;
    }
    return [...pieces, piece];
  }

  private step({ size = plainSize }: TextStyle): number {
    return size * lineHeight;
  }

  private style({ size = plainSize, bold = false, gray = 0 }: TextStyle): void {
    this.pen
      .font(bold ? 'bold' : 'plain')
      .fontSize(size)
      .fillColor(shade(gray));
  }
}

/** 0 black to 1 white, as pdfkit takes colors. */
export const shade = (gray: number): [number, number, number] => {
  const level = Math.round(gray * 255);
  return [level, level, level];
};
