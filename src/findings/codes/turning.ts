import { codes } from './entry.ts';
import { notChecked, notSaid } from './not-said.ts';

const guard =
  'Keep the machine behind its interlocked guard, and go by its maker\u2019s limits and local codes.';

const unbalance = { measured: 'g.mm', limit: 'g.mm' } as const;
/** What is in the mold: metal, or nothing. */
const filling = ['full', 'empty'] as const;
const filled = '{filling, select, full {As cast} other {Spun up empty,}}';
const ofIt = '{added, select, none {} other { (of it {added} by plates and a mold off the axis, at worst)}}';
const shot = { measured: 'g', limit: 'g', speed: 'rpm' } as const;

/** The mold as it turns: balance, metal under pressure, speed. */
export const turningCodes = codes({
  'balance.not-checked': {
    ...notChecked,
    means:
      'What the balance, or the limit it is held to, is found from is left out of the plan, or is of a kind no density is at hand for.',
    values: { missing: 'names', 'material?': 'names', 'held?': 'names' },
    says: {
      nothing:
        'No unbalance is found at all: {missing, select, none {} other {the plan does not say {missing}}}{material, select, none {} other {{missing, select, none {} other {, and }}no density of {material} is at hand}}.{held, select, none {} other { To hold it to its limits it would have to say {held} too.}}',
      grade: 'The unbalance is found, but not held to a balance grade: the plan does not say {missing}.',
      part: 'The unbalance is found and held to its grade, but without what the plan does not say: {missing}.',
    },
    remedy: {
      nothing:
        'Add what is named to the plan; a density goes under `alloy`, `rubber` or, of rigid halves and loose bosses, `materials`.',
      grade: 'Add what is named to the plan.',
      part: 'Add what is named to the plan.',
    },
  },
  'balance.over': {
    formula:
      "sum of m r as cast and empty, plus `machine.plateUnbalance` and mass of the mold times `machine.centering`, against U = 1000 G m / omega; then each outer face against its share of U by the lever rule from the middle of mass, 0.3 to 0.7. The standard's planes are those of the bearings; where they are not known, the outer faces stand for them",
    source: 'ISO 21940-11:2016 (formerly ISO 1940-1); the outer faces for the bearings are our own choice',
    severity: 'warn',
    means:
      'Full, or empty as it spins up, the mold is further out of balance than the grade allows at this speed: it shakes.',
    values: {
      ...unbalance,
      grade: 'name',
      speed: 'rpm',
      filling,
      /** Of it what plates and a mold off the axis add at worst. */
      'added?': 'g.mm',
      /** Of one outer face where the whole is in balance enough. */
      'half?': ['lower', 'upper'],
      /** Where the heavy side lies, what at the rim balances it, and where. */
      'heavy?': 'deg',
      'weight?': 'g',
      'opposite?': 'deg',
      /** Two placements that may change places, and what that leaves. */
      'swap?': 'name',
      'swapWith?': 'name',
      'swapLeaves?': 'g.mm',
      /** What a dummy cavity takes more than it displaces, and how far from the axis. */
      'dummy?': 'g',
      'dummyRadius?': 'mm',
    },
    says: {
      whole: `${filled} the mold is {measured} out of balance{heavy, select, none {} other { at {heavy}}}${ofIt}, where {limit} is allowed for {grade} at {speed}.`,
      face: `${filled} the {half} face carries {measured}${ofIt}, where {limit} is its share for {grade} at {speed}.`,
    },
    remedy: {
      whole:
        '{filling, select, full {{swap, select, none {Fix} other {Swap {swap} with {swapWith}, which leaves {swapLeaves}, or fix}} {weight} to the rim at {opposite}{dummy, select, none {} other {, or cut a dummy cavity that takes {dummy} more than what it displaces, {dummyRadius} from the axis at {opposite}}}.} other {Lay like masters opposite each other, which balances it full and empty alike; a mass at the rim mends the one and spoils the other.}} Never reach into a mold that turns.',
      face: 'Move the heavy side inward, spread it, or balance it by a dummy cavity.',
    },
  },
  'balance.misrun-grade': {
    formula:
      'sum of m r with the metal of the worst cavity left out, plus `machine.plateUnbalance` and mass of the mold times `machine.centering`, against U = 1000 G m / omega',
    source: 'ISO 21940-11:2016 (formerly ISO 1940-1)',
    severity: 'note',
    means:
      'Should one cavity stay empty, the mold is further out of balance than the grade allows at this speed: it shakes until it is stopped.',
    values: { ...unbalance, grade: 'name', speed: 'rpm', 'added?': 'g.mm' },
    says: `With {subject} left empty the mold is {measured} out of balance${ofIt}, where {limit} is allowed for {grade} at {speed}.`,
    remedy: `If it shakes, let it run out before the next pour; a cavity nearer the axis, or a slower run, shakes less. ${guard}`,
  },
  'balance.machine': {
    formula:
      'sum of m r as cast and empty, plus `machine.plateUnbalance` and mass of the mold times `machine.centering`, against the limit in `machine.maxUnbalance`',
    source: "limit by the machine's maker, as the plan gives it",
    severity: 'stop',
    means: 'Full, or empty as it spins up, the mold is further out of balance than the machine stands.',
    values: { ...unbalance, filling },
    says: `${filled} the mold is {measured} out of balance; the machine stands {limit}.`,
    remedy: `Lay the masters out anew, or fix a mass opposite the heavy side. ${guard}`,
    safety: true,
  },
  'balance.misrun': {
    formula:
      'sum of m r with the metal of the worst cavity left out, plus `machine.plateUnbalance` and mass of the mold times `machine.centering`, against `machine.maxUnbalance`',
    source: "limit by the machine's maker, as the plan gives it",
    severity: 'warn',
    means: 'Should one cavity stay empty, the mold is further out of balance than the machine stands.',
    values: unbalance,
    says: 'With {subject} left empty the mold is {measured} out of balance; the machine stands {limit}.',
    remedy: `Move that cavity inward, or run slower. ${guard}`,
  },
  'shot.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what shot and pressure are found from; that part is not checked.',
    says: `Pressure and shot are in part ${notSaid}`,
  },
  'shot.short': {
    formula:
      'volumes of cavities and gates, and of the well outside the free surface through its edge, times density',
    source: 'closed form: liquid turning with its vessel',
    severity: 'warn',
    means: 'The shot is too small to fill cavities and gates out to the well: castings stay short.',
    values: shot,
    says: 'The shot weighs {measured}; cavities, gates and the edge of the well take {limit} at {speed}.',
    remedy: 'Melt and pour more.',
  },
  'shot.flash-spreads': {
    formula:
      'pi rho omega^2 (R^2 - r_s^2)^2 / 4 against the closing force; what is beyond it over `machine.stiffness`',
    source: 'closed form: liquid turning with its vessel',
    severity: 'note',
    means:
      'The mold stays shut as long as no metal is between the halves; once it is there, it presses on ever more of them and the machine no longer holds them.',
    values: { measured: 'N', limit: 'N', 'gap?': 'mm' },
    says: 'Were metal to get between the halves out to the rim, it would push with {measured}; the machine holds {limit}{gap, select, none {, and how far the mold then gapes the plan does not say} other {, and the mold would gape by {gap}}}.',
    remedy: `Keep the parting faces whole and clean, and close harder or turn slower if flash begins. Metal leaves at the rim. ${guard}`,
  },
  'squeeze.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what the squeeze of the halves is found from.',
    says: `How much the halves are squeezed is ${notSaid}`,
  },
  'squeeze.cover': {
    formula: 'closing force over what of the halves carries it, over E: faces that slide freely',
    source: 'Gent and Lindley, 1959; Gent, 1958, where the modulus is from the hardness',
    severity: 'warn',
    means: 'Squeezed by the machine, less rubber than wanted is left over a cavity.',
    values: { measured: 'mm', limit: 'mm', before: 'mm', squeeze: 'ratio' },
    says: 'Squeezed by up to {squeeze}, {before} of cover become {measured}; {limit} are wanted.',
    remedy: 'Close with less force, or take thicker stock or harder rubber.',
  },
  'shot.spill': {
    formula: 'free surface z0 + omega^2 r^2 / 2 g against the edge of the pouring hole',
    source: 'closed form: liquid turning with its vessel',
    severity: 'stop',
    means:
      'At this speed the free surface of the shot stands over the edge of the pouring hole: metal is thrown out.',
    values: shot,
    says: 'The shot weighs {measured}; at {speed} more than {limit} climbs out of the pouring hole.',
    remedy: `Pour less, or run slower. ${guard}`,
    safety: true,
  },
  'shot.flash': {
    formula:
      'integral of rho omega^2 (r^2 - r_s^2) / 2 over the faces metal presses apart, times 1.25, against the closing force',
    source: 'closed form; the reserve of a quarter is our own choice',
    severity: 'stop',
    means:
      'Metal pushes the halves apart harder than the machine holds them: it flashes, or sprays out at the rim.',
    values: { measured: 'N', limit: 'N' },
    says: 'Metal pushes the halves apart with {measured}, and a quarter more is wanted against it; the machine holds them with {limit}.',
    remedy: `Run slower, close harder within the limits of mold and machine, or put fewer masters on the disc. ${guard}`,
    safety: true,
  },
  'shot.slow': {
    formula: '2 gamma / p at the inner end of the innermost cavity, against `spin.detail`',
    source: 'Young and Laplace; surface tension from memory',
    severity: 'warn',
    means: 'The metal is not pressed hard enough to fill the finest detail the plan asks for.',
    values: { measured: 'rpm', limit: 'rpm', detail: 'mm' },
    says: 'At {measured} metal is not pressed into details of {detail} at the inner ends of all cavities; that takes {limit}.',
    remedy: 'Run faster within the limits of mold and machine, or move the innermost masters outward.',
  },
  'spin.not-checked': {
    ...notChecked,
    means: 'The plan leaves out the speed, its limit or what turns; that part is not checked.',
    says: `The speed is in part ${notSaid}`,
  },
  'spin.plate-small': {
    severity: 'stop',
    means:
      'Cavities reach beyond the edge of the pressing plate: nothing holds the halves shut there against the metal, which can spray out.',
    values: { measured: 'mm', limit: 'mm' },
    says: 'The pressing plate is {measured} across; cavities reach out to {limit}.',
    formula: 'diameter of the plate against that of the circle round all cavities',
    source: 'geometry',
    remedy: `Take plates as wide as the disc, or lay the masters farther in. ${guard}`,
    safety: true,
  },
  'spin.overhang': {
    severity: 'warn',
    means: 'The disc overhangs its pressing plate: its rim is not held, and bends away under the metal.',
    values: { measured: 'mm', limit: 'mm' },
    says: 'The pressing plate is {measured} across; the disc is {limit}.',
    formula: 'diameter of the plate against that of the disc',
    source: 'common practice, no published source',
    remedy: 'Take plates as wide as the disc.',
  },
  'spin.over-limit': {
    formula: 'speed of the plan against `machine.maxSpeed`',
    source: "limit by the machine's maker, as the plan gives it",
    severity: 'stop',
    means: 'The plan turns the mold faster than the machine may turn.',
    values: { measured: 'rpm', limit: 'rpm' },
    says: 'The plan turns the mold at {measured}; the machine may turn at {limit} at most.',
    remedy: `Run slower. ${guard}`,
    safety: true,
  },
  'spin.unknown': {
    severity: 'stop',
    means:
      'What rigid halves are turned with is left out: nobody can say that they hold, and that the metal stays in them.',
    values: { missing: 'names' },
    says: 'Whether rigid halves hold while they turn is not known: the plan does not say {missing}.',
    formula: 'what is left out counts as what would be stopped',
    source: 'our own choice',
    remedy: `Write what is named: \`spin.speed\`, \`spin.shot\`, and the \`density\` of what is cast, also of a cold casting resin. ${guard}`,
    safety: true,
  },
  'spin.strength-unknown': {
    severity: 'stop',
    means: 'The strength of rigid halves is not known, and so not the speed at which they fly apart.',
    values: { material: 'name', speed: 'rpm' },
    says: 'Nothing is known of the strength of halves of {material}, which are to turn at {speed}.',
    formula: 'a blank in the table stops',
    source: 'table of materials of rigid halves, each row with its source',
    remedy: `Name a material the table knows as \`fixture.material\`, with its grade, such as 6061-T6, or give its data sheet under \`materials\`. ${guard}`,
    safety: true,
  },
  'spin.weak': {
    formula:
      'tensile strength over (3 + nu) / 4 rho omega^2 [r_o^2 + (1 - nu) / (3 + nu) r_i^2], the metal carried by what is left of the halves; at least 4',
    source: 'Timoshenko; Roark, ch. 16; Shigley 3-15; the factor is our own choice',
    severity: 'stop',
    means: 'Turning strains rigid halves past a quarter of their tensile strength: they may fly apart.',
    /** Speeds: the plan's, and up to which the halves would be strong enough. */
    values: { measured: 'times', limit: 'times', material: 'name', speed: 'rpm', allowed: 'rpm' },
    says: 'Halves of {material} are {measured} as strong as their stress at {speed}, where {limit} is wanted, which they have up to {allowed}.',
    remedy: `Run slower, or take stronger halves. ${guard}`,
    safety: true,
  },
});
