import { documentOf, drawingOf, group, line, pageOf, square } from './samples.ts';

/** One of everything that a drawing can hold, but pictures. */
export const everything = documentOf(
  drawingOf(300, 200, [
    group('cut', [line('heavy', 10, 10, 290, 10), line('dashed', 10, 10, 150.123456, 180), square(200, 100, 20, 0.8)]),
    group('curves', [
      {
        kind: 'path',
        pen: 'dotted',
        fill: '#f0c040',
        id: 'ring',
        paths: [
          {
            start: { x: 100, y: 100 },
            closed: true,
            segments: [{ kind: 'arc', centre: { x: 80, y: 100 }, to: { x: 100, y: 100 }, clockwise: true }],
          },
          {
            start: { x: 90, y: 100 },
            closed: true,
            segments: [
              { kind: 'arc', centre: { x: 80, y: 100 }, to: { x: 70, y: 100 }, clockwise: false },
              { kind: 'cubic', c1: { x: 70, y: 113 }, c2: { x: 90, y: 113 }, to: { x: 90, y: 100 } },
            ],
          },
        ],
      },
    ]),
    group('words', [
      {
        kind: 'text',
        text: '16 ½ × 20 ⅜″, Ωμέγα, Журнал <&> "5′"',
        at: { x: 20, y: 170 },
        anchor: 'start',
        size: 6,
        weight: 'regular',
        turn: 0,
        colour: 0,
      },
      {
        kind: 'text',
        text: 'TOP',
        at: { x: 150, y: 60 },
        anchor: 'middle',
        size: 12,
        weight: 'bold',
        turn: 30,
        colour: '#803010',
      },
    ]),
    group('grid', [line('fine', 0, 100, 300, 100)], false),
  ]),
  ([0, 90, 180, 270] as const).map((rotation, i) =>
    pageOf(i + 1, {
      rotation,
      part: { x: 5, y: 5, width: 190, height: 190, pageX: 10, pageY: 15 + i },
      scale: i % 2 === 0 ? { x: 1, y: 1 } : { x: 0.9965, y: 1.002 },
      under: [square(5, 5, 5, 0.9)],
      over: [line('heavy', 10, 280, 110, 280)],
    }),
  ),
);
