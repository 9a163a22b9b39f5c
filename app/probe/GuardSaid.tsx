import { useTranslations } from 'next-intl';
import { Computed } from '#app/science/Computed.tsx';
import { Section } from '#app/ui/Section.tsx';
import type { Guard } from '#lib/between/probe-guard.ts';
import { degrees, type Unit } from '#shared/units.ts';
import css from './page.module.css';

type Props = { guards: readonly Guard[]; unit: Unit; time: (ms: number) => string };

/** From which reading on this thermometer shows a limit in spite of its own error, and what its last one shows. */
export function GuardSaid({ guards, unit, time }: Props) {
  const t = useTranslations('kitchen.probe.guard');
  if (guards.length === 0) return null;
  return (
    <section className={css.part}>
      <h3>{t('title')}</h3>
      <p>{t('help')}</p>
      {guards.map((guard) => (
        <Figures key={guard.side} guard={guard} unit={unit} time={time} />
      ))}
    </section>
  );
}

type FigureProps = { guard: Guard; unit: Unit; time: Props['time'] };

function Figures({ guard, unit, time }: FigureProps) {
  const t = useTranslations('kitchen.probe.guard');
  const { side, last } = guard;
  const figure = (value: number): string => `${Number(value.toFixed(1))}\u00a0${degrees(unit)}`;
  const [from, until, limit] = [guard.from, guard.until, guard.limit].map(figure);
  return (
    <>
      <p>
        {t('said', { side, limit: limit ?? '', from: from ?? '', until: until ?? '' })}{' '}
        <Section>{guard.figure.section}</Section>
      </p>
      {last === null ? null : (
        <p>
          {t(`last.${last.decision}`, {
            side,
            value: figure(last.value),
            time: time(last.look.at),
            limit: limit ?? '',
          })}
        </p>
      )}
      <Computed
        words={t('figure', { side, limit: limit ?? '' })}
        figure={from}
        inputs={[
          { words: t('in_limit'), value: `${limit}, ${guard.figure.section}` },
          { words: t('in_half'), value: `± ${figure(guard.half)}` },
          { words: t('in_u'), value: figure(guard.u) },
          { words: t('in_a95', { side }), value: figure(guard.a95) },
          ...(last === null
            ? []
            : [
                { words: t('in_last', { time: time(last.look.at) }), value: figure(last.value) },
                { words: t('in_chance', { side }), value: chance(last.pConform) },
              ]),
        ]}
        formula={
          side === 'hot'
            ? 'y − a ≥ L; p = Φ((y − L)/u); u² = a²/3 + d²/12'
            : 'y + a ≤ L; p = Φ((L − y)/u); u² = a²/3 + d²/12'
        }
        source={t('source')}
        use={last === null || last.decision === 'shown_at_or_above' ? 'S' : 'A'}
        note={t('note')}
      />
    </>
  );
}

/** Whole percent, against the claim: never rounded up, never 100. */
const chance = (p: number): string => (p < 0.01 ? '< 1 %' : `${Math.min(99, Math.floor(p * 100))} %`);
