import { convertXyz65ToXyz50 } from 'culori/fn';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { adaptTristimulus } from '../../src/optics/adaptation.ts';
import { whitePoint } from '../../src/optics/tristimulus.ts';
import { expectClose } from './close.ts';

const AXES = ['X', 'Y', 'Z'] as const;
const number = fc.double({ min: 0, max: 1, noNaN: true });
const colour = fc.record({ X: number, Y: number, Z: number });

test('adaptTristimulus makes one white the other', () => {
  const adapted = adaptTristimulus(whitePoint('A'), whitePoint('A'), whitePoint('D65'));
  for (const axis of AXES) expectClose(adapted[axis], whitePoint('D65')[axis], 2e-7, axis);
});

test('adaptTristimulus from the D65 of sRGB to D50 is culori’s conversion, to the seven digits of the printed matrices', () => {
  const D65 = { X: 0.3127 / 0.329, Y: 1, Z: (1 - 0.3127 - 0.329) / 0.329 };
  const D50 = { X: 0.3457 / 0.3585, Y: 1, Z: (1 - 0.3457 - 0.3585) / 0.3585 };
  fc.assert(
    fc.property(colour, (XYZ) => {
      const ours = adaptTristimulus(XYZ, D65, D50);
      const theirs = convertXyz65ToXyz50({ x: XYZ.X, y: XYZ.Y, z: XYZ.Z });
      expectClose(ours.X, theirs.x, 1e-6, 'X');
      expectClose(ours.Y, theirs.y, 1e-6, 'Y');
      expectClose(ours.Z, theirs.z, 1e-6, 'Z');
    }),
  );
});

test('adaptTristimulus from a white to itself changes nothing, and there and back is where it began', () => {
  fc.assert(
    fc.property(colour, (XYZ) => {
      const same = adaptTristimulus(XYZ, whitePoint('D65'), whitePoint('D65'));
      const back = adaptTristimulus(
        adaptTristimulus(XYZ, whitePoint('D65'), whitePoint('A')),
        whitePoint('A'),
        whitePoint('D65'),
      );
      // The printed inverse has seven digits.
      for (const axis of AXES) {
        expectClose(same[axis], XYZ[axis], 3e-7, axis);
        expectClose(back[axis], XYZ[axis], 1e-6, axis);
      }
    }),
  );
  expect(adaptTristimulus({ X: 0, Y: 0, Z: 0 }, whitePoint('A'), whitePoint('D65'))).toEqual({ X: 0, Y: 0, Z: 0 });
});
