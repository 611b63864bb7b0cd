import PDFDocument from 'pdfkit';
import { type Cause, causesByCode, type Report, type UnitSystem } from '../../findings/index.ts';
import { moveMesh } from '../../geometry/index.ts';
import { silhouette } from '../../mesh/index.ts';
import { type Mold, masterOf } from '../../mold/index.ts';
import { counted, fixed, sayCause, tally } from '../../wording/index.ts';
import { answersOf } from '../answers.ts';
import type { Build } from '../build.ts';
import { amounts, ledger } from './amounts.ts';
import { benchOrder, cautions } from './bench-order.ts';
import { buildUpTable, type LaidBuildUp, laidBuildUps } from './build-ups.ts';
import { cuttingTable } from './cutting-order.ts';
import { type DiscDrawing, drawDisc, type Shadow } from './disc-view.ts';
import { drillingTable } from './drilling-list.ts';
import type { FontFiles } from './fonts.ts';
import { bossTable, masterTable, placementTable, rimTable } from './lists.ts';
import { makePage } from './make-page.ts';
import { both } from './names.ts';
import { Paper } from './paper.ts';
import { pourRecord } from './record.ts';
import { heightBars, sideView } from './side-view.ts';
import { symptomsPage } from './symptoms-page.ts';
import { planPages } from './tiles.ts';

/** What is drawn, its build-ups with their sizes. */
interface SheetDrawing extends DiscDrawing {
  readonly buildUps: readonly LaidBuildUp[];
}

/** Grid of the shadows' outlines, mm: a pencil line is wider than what it may miss. */
const shadowCell = 0.2;

/**
 * The papers of one mold for the bench, as PDF: what it is, what to make for it, plan view at true size (over several pages where the
 * disc exceeds one), side view, tables, order of work, amounts, findings, cautions and a blank pour record. Vector
 * throughout. The same build gives the same bytes: the date inside is fixed.
 */
export async function shopSheet(build: Build, fonts: FontFiles): Promise<Uint8Array> {
  const { mold } = build;
  const pen = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    // None of the faces every reader has: in a page they would have to be brought along.
    font: '',
    // The page and the command have compressors of their own, and the sheet is to have the same bytes from both.
    compress: false,
    info: { Title: mold.title, Producer: 'discwright', Creator: 'discwright', CreationDate: new Date(0) },
  });
  const bytes = collect(pen);
  const heading = mold.revision === '' ? mold.title : `${mold.title}, revision ${mold.revision}`;
  const paper = new Paper(pen, mold.paper, heading, fonts);
  const buildUps = laidBuildUps(build, shadowCell);
  const drawing = { mold, shadows: shadowsOf(mold), buildUps };
  front(paper, build, drawing);
  makePage(paper, build);
  if (mold.placements.length > 0) moldPages(paper, build, drawing);
  else fixturePages(paper, build, drawing);
  numberPages(paper, build);
  pen.end();
  return bytes;
}

/** Tables, order of work, amounts, plan view and pour record of a mold with masters in it. */
function moldPages(paper: Paper, build: Build, drawing: SheetDrawing): void {
  const { mold, report } = build;
  paper.page('Heights');
  sideView(paper, mold);
  heightBars(paper, mold, report);
  paper.page('Tables');
  masterTable(paper, mold, report, 'Tables');
  placementTable(paper, mold, report, 'Tables');
  bossTable(paper, mold, 'Tables');
  buildUpTable(paper, drawing.buildUps, mold.units, 'Tables');
  rimTable(paper, mold, 'Tables');
  orderPage(paper, mold);
  cuttingTable(paper, mold, 'Order of work');
  drillingTable(paper, mold, 'Order of work');
  paper.page('Amounts');
  amounts(paper, build, 'Amounts');
  ledger(paper, mold, report, 'Amounts');
  findingsPage(paper, mold, report);
  planPages(paper, drawing);
  symptomsPage(paper, mold, report);
  pourRecord(paper, 'Pour record');
}

/** Of a plan for fixtures alone: how they stand in the halves, and where off the axis; there is nothing to pour yet. */
function fixturePages(paper: Paper, { mold, report }: Build, drawing: SheetDrawing): void {
  const placed = [mold.bosses, mold.tabs, mold.notches].some((things) => things.length > 0);
  orderPage(paper, mold);
  sideView(paper, mold);
  if (placed) {
    bossTable(paper, mold, 'Tables');
    rimTable(paper, mold, 'Tables');
  }
  findingsPage(paper, mold, report);
  if (placed) planPages(paper, drawing);
}

/** What kind of mold this is, one small plan view, what is open, and the cautions: all on the first page. */
function front(paper: Paper, { mold, report, withheld }: Build, drawing: SheetDrawing): void {
  paper.page(mold.title);
  const { disc, process, fixture, units } = mold;
  const facts = [
    ...(paper.fitted(mold.title, 0.6 * paper.width, { size: 4.6, bold: true }) === mold.title
      ? []
      : [mold.title]),
    `Process: ${process}. Disc: ${both(units, 2 * disc.radius)} across, lower half ${both(units, disc.lower)}, upper half ${both(units, disc.upper)}.`,
    [...contents(mold, drawing.buildUps.length), `Fixtures of ${fixture.material}.`].join(' '),
    `Findings open: ${tally(report.findings)}; see the findings page.`,
    ...(withheld.length > 0 ? [`Not written: ${withheld.map(({ title }) => title).join(', ')}.`] : []),
  ];
  for (const fact of facts) paper.paragraph(fact, mold.title, { size: 3.2 });
  const warned = cautions(process);
  const below = warned.length * 9 + 8;
  const side = Math.min(paper.width, paper.bottom - paper.y - below);
  const scale = side / (2 * disc.radius + 8);
  drawDisc(paper, drawing, {
    x: paper.left + paper.width / 2,
    y: paper.y + side / 2,
    scale: Math.min(1, scale),
  });
  paper.write(
    `Lower half from above, 1:${fixed(1 / Math.min(1, scale), 2)}`,
    paper.left,
    paper.y + side - 3,
    {
      size: 2.4,
    },
  );
  paper.y += side + 3;
  paper.section('Cautions', mold.title, below - 4);
  for (const caution of warned) paper.paragraph(caution, mold.title, { size: 2.7 });
}

/** What is in the mold, of what there is any. */
function contents({ placements, masters, bosses }: Mold, buildUps: number): string[] {
  const said = [
    ...(placements.length > 0
      ? [
          `${counted(placements.length, 'placement', 'placements')} of ${counted(masters.length, 'master', 'masters')}`,
        ]
      : []),
    ...(bosses.length > 0 ? [counted(bosses.length, 'boss', 'bosses')] : []),
    ...(buildUps > 0 ? [counted(buildUps, 'build-up', 'build-ups')] : []),
  ];
  return said.length === 0 ? [] : [`${said.join(', ')}.`];
}

function orderPage(paper: Paper, mold: Mold): void {
  const title = 'Order of work';
  paper.page(title);
  for (const step of benchOrder(mold)) {
    paper.room(9, title);
    const { y } = paper;
    paper.pen
      .rect(paper.left, y + 0.3, 3.4, 3.4)
      .lineWidth(0.25)
      .strokeColor([0, 0, 0])
      .stroke();
    paper.y += paper.wrap(step, paper.left + 6, y, paper.width - 6, { size: 3.2 }) + 2.6;
  }
  paper.y += 4;
}

/** The answers first, then all that was found, worst first. */
function findingsPage(paper: Paper, mold: Mold, report: Report): void {
  const { findings, units } = report;
  const title = 'Findings still open';
  paper.page(title);
  const answers = [
    { title: 'before it is made', share: 0.22 },
    { title: '', share: 0.14 },
    { title: 'what decides, and what is wanted', share: 0.64 },
  ];
  const answered = answersOf(mold, report).map(({ asks, verdict, says, besides = '' }) => [
    asks,
    verdict,
    besides === '' ? says : `${says}\n${besides}`,
  ]);
  if (answered.length > 0) paper.table(answers, answered, title);
  if (findings.length === 0) paper.paragraph('None.', title);
  const columns = [
    { title: '', share: 0.08 },
    { title: 'about', share: 0.24 },
    { title: 'what, and what to do', share: 0.68 },
  ];
  const rows = causesByCode(findings).flatMap((causes) => rowsOf(causes, units));
  if (rows.length > 0) paper.table(columns, rows, title);
}

/** A row for each cause, so that a page can end between them; what is to be done about all of them is said once. */
function rowsOf(causes: readonly Cause[], units: UnitSystem): string[][] {
  const [{ worst }] = causes;
  const said = causes.map((cause) => ({ cause, ...sayCause(cause, units) }));
  const [{ remedy }] = said;
  const once = said.length > 1 && said.every((one) => one.remedy === remedy);
  return [
    ...said.map(({ cause: { findings }, subjects, where, says, remedy: todo }) => {
      const placed = findings.length > 1 ? `${where}: ${says}` : says;
      return [
        worst.severity,
        once ? subjects : `${subjects}\n${worst.code}`,
        once ? placed : `${placed} ${todo}`,
      ];
    }),
    ...(once ? [['', worst.code, `All of these: ${remedy}`]] : []),
  ];
}

const shadowsOf = (mold: Mold): Shadow[] =>
  mold.placements.map(({ id, master, x, y, matrix }) => {
    const rings = silhouette(moveMesh(masterOf(mold, { id, master }).mesh, matrix), shadowCell);
    return { id, x, y, rings };
  });

function numberPages(paper: Paper, { planHash, version }: Build): void {
  const { start, count } = paper.pen.bufferedPageRange();
  for (let page = start; page < start + count; page++) {
    paper.backTo(page);
    const y = paper.bottom + 3;
    paper.write(`page ${page - start + 1} of ${count}`, paper.right, y, { size: 2.4, gray: 0.35 }, 'right');
    const trace = `plan ${planHash.slice(0, 12)}, discwright ${version}`;
    paper.write(trace, paper.left, y, { size: 2.4, gray: 0.35 });
  }
}

function collect(pen: PDFKit.PDFDocument): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    pen.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pen.on('error', reject);
    pen.on('end', () => {
      const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let at = 0;
      for (const chunk of chunks) {
        whole.set(chunk, at);
        at += chunk.length;
      }
      resolve(whole);
    });
  });
}
