import type { OutsideCheck } from './outside-check.ts';

/** One pour after another: setting, heat of the halves. */
export const pouringChecks: readonly OutsideCheck[] = [
  {
    figures: ['setting.thickest', 'setting.chvorinov', 'setting.well', 'setting.open'],
    source: "a cube of 12 mm against rubber, Chvorinov's rule worked by hand; the well the same way",
    kind: 'handbook',
    value: '12 mm across; V / A 2 mm, pi / 4 (rho H V / A / (e dT))^2',
    file: 'setting.test.ts',
    test: 'a cube of 12 mm in rubber',
  },
  {
    figures: ['setting.time'],
    source:
      'Neumann: lambda 0.6201 where c dT / H is 1 and the half is perfect (Carslaw and Jaeger; Crank, Free and Moving Boundary Problems, eq. 3.14)',
    kind: 'handbook',
    value: '0.6201; 0.2200 at 0.1',
    file: 'setting.test.ts',
    test: 'the constant of Neumann',
  },
  {
    figures: ['setting.time'],
    source: 'finite differences of the enthalpy in metal and half, written anew',
    kind: 'closed form',
    value: 'within 2 % in rubber and in aluminum',
    file: 'setting.test.ts',
    test: 'as finite differences have it',
  },
  {
    figures: ['pours.halves', 'pours.cycle', 'pours.perHour'],
    source:
      'halves so thin that they are of one temperature: dT e^-a / (1 - e^-a), a geometric series by hand',
    kind: 'closed form',
    value: 'a = h t / (rho c L); the mean of the outer face from the heat that leaves it',
    file: 'pours.test.ts',
    test: 'halves of one temperature',
  },
  {
    figures: ['pours.halves'],
    source: 'finite differences through a half, pour by pour, written anew',
    kind: 'closed form',
    value: 'within 0.5 K over 20 pours',
    file: 'pours.test.ts',
    test: 'pour by pour as finite differences have it',
  },
  {
    figures: ['pours.preheatSure', 'pours.preheatLeast'],
    source: 'the heat a thick half takes, 2 e dT sqrt(t / pi), put against superheat and all heat by hand',
    kind: 'handbook',
    value: 'the half at which both are equal',
    file: 'pours.test.ts',
    test: 'preheat takes what the metal has to give',
  },
  {
    figures: ['order.pours', 'order.made', 'order.metal', 'order.used', 'order.remelt'],
    source: 'arithmetic by hand: 100 castings of 12.096 g from three cavities and shots of 60 g, a tenth bad',
    kind: 'closed form',
    value: '38 pours, 102 good, 2.28 kg poured, 1.28665 used, 45.57 % back',
    file: 'order.test.ts',
    test: 'pours, metal and what is melted again',
  },
  {
    figures: ['order.time'],
    source: 'arithmetic by hand',
    kind: 'closed form',
    value: '33 times from pour to pour',
    file: 'order.test.ts',
    test: 'takes as long as its pours',
  },
  {
    figures: ['cost.metal', 'cost.work', 'cost.mold', 'cost.moldShare', 'cost.casting', 'cost.run'],
    source: 'arithmetic by hand: 30 per kg of metal, 10 per kg of rubber, 36 per hour, 15 else, 500 castings',
    kind: 'closed form',
    value: '0.3762 of metal; 102 for the mold, 0.204 of it each',
    file: 'order.test.ts',
    test: 'of a casting',
  },
];
