import { ruleLinePaths } from '#lib/sheet/line-geometry.ts';
import { Drawn } from './ProofLine.tsx';
import css from './RuleLine.module.css';

type Props = { y: number; width: number /** "135°" */; figure: string; section: string };

/** The rule in a chart (inside an svg): a thick and a thin line, its figure above and its section below. */
export function RuleLine({ y, width, figure, section }: Props) {
  return (
    <g>
      {ruleLinePaths(width, y).map((path) => (
        <Drawn key={path.d} path={path} />
      ))}
      <text x={2} y={y - 5} className={css.figure}>
        {figure}
      </text>
      <text x={width} y={y + 19} textAnchor="end" className={css.section}>
        {section}
      </text>
    </g>
  );
}
