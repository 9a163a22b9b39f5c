import { Path, Svg, Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import {
  type MarkPath,
  type MarkWord,
  markBox,
  markPaths,
  type SampleKind,
  samplePaths,
} from '../mark-paths.ts';
import { style } from './style.ts';

const paths = (word: MarkWord | SampleKind): readonly MarkPath[] =>
  word in markPaths ? markPaths[word as MarkWord] : samplePaths[word as SampleKind];

/** A mark or a sample, black, `width` pt wide. The word that stands beside it says the same. */
export const mark = (word: MarkWord | SampleKind, width = 26, sample = false): ReactElement =>
  h(
    Svg,
    {
      width,
      height: (width * markBox.height) / markBox.width,
      viewBox: `0 0 ${markBox.width} ${markBox.height}`,
      style: { marginRight: 4 },
    },
    (sample ? samplePaths[word as SampleKind] : paths(word)).map((path, at) =>
      h(Path, {
        key: at,
        d: path.d,
        fill: path.stroke === null ? '#000' : 'none',
        ...(path.stroke === null ? {} : { stroke: '#000', strokeWidth: path.stroke }),
        ...(path.dash === null ? {} : { strokeDasharray: path.dash }),
      }),
    ),
  );

/** The numbered square that ties an exception to its place on the lines. */
export const tagBox = (tag: number, size: number): ReactElement =>
  h(
    View,
    {
      style: {
        width: size,
        height: size,
        borderWidth: 1,
        borderColor: '#000',
        alignItems: 'center',
        justifyContent: 'center',
        backgroundColor: '#fff',
      },
    },
    h(Text, { style: { ...style.strong, fontSize: size >= 15 ? 10 : 9, lineHeight: 1.1 } }, String(tag)),
  );
