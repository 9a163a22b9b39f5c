import { useTranslations } from 'next-intl';
import { momentOf } from '#app/client/moment.ts';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { StepName } from '#shared/entries/step-name.ts';
import { degrees } from '#shared/units.ts';
import { CoolingMethods } from './CoolingMethods.tsx';
import type { BatchContext } from './context.ts';
import { DateMark } from './DateMark.tsx';
import css from './form.module.css';
import type { StepForm } from './step-details.ts';
import { TimeControl } from './TimeControl.tsx';

export type QuestionProps = {
  step: StepName;
  form: StepForm;
  onChange: (part: Partial<StepForm>) => void;
  context: Pick<BatchContext, 'unit' | 'zone' | 'clock' | 'places' | 'rules'>;
  equipment: string | null;
  /** When the step begins, ms; null = not said yet. Missing = now. */
  at?: number | null;
};

/** What this step wants to know beside its place. All of it may stay unsaid, but for why something is gone. */
export function StepQuestions(props: QuestionProps) {
  switch (props.step) {
    case 'cooling':
      return <Cooling {...props} />;
    case 'reheat':
      return <Reheat {...props} />;
    case 'rest':
    case 'hot_hold':
      return <Size {...props} />;
    case 'cook':
      return <Cook {...props} />;
    case 'gone':
      return <Gone {...props} />;
    case 'cold_hold':
      return <DateMark {...props} />;
    case 'time_control':
      return <TimeControl {...props} />;
    default:
      return null;
  }
}

const depths = [
  ['2', 'depth_shallow'],
  ['4', 'depth_middle'],
  ['6', 'depth_deep'],
] as const;
const covers = [
  ['uncovered', 'cover_none'],
  ['loosely', 'cover_loose'],
  ['lid', 'cover_lid'],
] as const;

function Cooling({ form, onChange, context }: QuestionProps) {
  const t = useTranslations('batch.cooling');
  return (
    <section className={css.part}>
      <CoolingMethods advice={context.rules.cooling} />
      <h2>{t('depth')}</h2>
      <div className={css.keys}>
        {depths.map(([inches, words]) => (
          <Key key={inches} down={form.depthIn === inches} onClick={() => onChange({ depthIn: inches })}>
            {t(words)}
          </Key>
        ))}
      </div>
      <h2>{t('cover')}</h2>
      <div className={css.keys}>
        {covers.map(([covered, words]) => (
          <Key key={covered} down={form.covered === covered} onClick={() => onChange({ covered })}>
            {t(words)}
          </Key>
        ))}
      </div>
      <p className={css.note}>{t('cooler_help')}</p>
      <div className={css.two}>
        <TextField
          id="depth"
          label={t('depth_other')}
          value={form.depthIn}
          inputMode="decimal"
          onChange={(event) => onChange({ depthIn: event.target.value })}
          maxLength={6}
        />
        <TextField
          id="cooler"
          label={t('cooler', { unit: degrees(context.unit) })}
          value={form.cooler}
          inputMode="decimal"
          onChange={(event) => onChange({ cooler: event.target.value })}
          maxLength={6}
        />
      </div>
      <Ingredients form={form} onChange={onChange} zone={context.zone} />
    </section>
  );
}

function Ingredients({ form, onChange, zone }: Pick<QuestionProps, 'form' | 'onChange'> & { zone: string }) {
  const t = useTranslations('batch.cooling');
  return (
    <>
      <h2>{t('ingredients')}</h2>
      <div className={css.keys}>
        {(['cooked', 'ambient'] as const).map((ingredients) => (
          <Key
            key={ingredients}
            down={form.ingredients === ingredients}
            onClick={() => onChange({ ingredients })}
          >
            {t(`ingredients_${ingredients}`)}
          </Key>
        ))}
      </div>
      {form.ingredients === 'ambient' ? (
        <TextField
          id="prepared"
          label={t('prepared')}
          inputMode="numeric"
          placeholder="10:30"
          maxLength={8}
          onChange={(event) => {
            const at = momentOf({ clock: event.target.value }, Date.now(), zone);
            onChange({ preparedAt: at === null ? null : new Date(at).toISOString() });
          }}
        />
      ) : null}
    </>
  );
}

const routes = ['conventional', 'microwave', 'roast', 'commercial', 'immediate'] as const;

function Reheat({ form, onChange }: QuestionProps) {
  const t = useTranslations('batch.reheat');
  return (
    <section className={css.part}>
      <h2>{t('route')}</h2>
      <p className={css.note}>{t('never')}</p>
      <div className={css.keys}>
        {routes.map((route) => (
          <Key key={route} down={form.route === route} onClick={() => onChange({ route })}>
            {t(route)}
          </Key>
        ))}
      </div>
      {form.route === 'microwave' ? (
        <div className={css.keys}>
          <Key down={form.careCovered} onClick={() => onChange({ careCovered: !form.careCovered })}>
            {t('covered')}
          </Key>
          <Key down={form.careStirred} onClick={() => onChange({ careStirred: !form.careStirred })}>
            {t('stirred')}
          </Key>
          <Key down={form.careStood} onClick={() => onChange({ careStood: !form.careStood })}>
            {t('stood')}
          </Key>
        </div>
      ) : null}
    </section>
  );
}

const ovens = ['still_dry', 'convection', 'high_humidity', 'pit'] as const;

function Cook({ form, onChange, context, equipment }: QuestionProps) {
  const t = useTranslations('batch.cook');
  const inPit = context.places.some((place) => place.id === equipment && place.kind === 'pit');
  return (
    <section className={css.part}>
      {inPit ? null : (
        <>
          <h2>{t('oven')}</h2>
          <div className={css.keys}>
            {ovens.map((oven) => (
              <Key key={oven} down={form.oven === oven} onClick={() => onChange({ oven })}>
                {t(oven)}
              </Key>
            ))}
          </div>
        </>
      )}
      <div className={css.two}>
        <TextField
          id="oven-temp"
          label={t('oven_temp')}
          value={form.ovenTempF}
          inputMode="decimal"
          onChange={(event) => onChange({ ovenTempF: event.target.value })}
          maxLength={6}
        />
        <TextField
          id="mass"
          label={t('mass')}
          hint={t('mass_help')}
          value={form.massLb}
          onChange={(event) => onChange({ massLb: event.target.value })}
          maxLength={300}
        />
      </div>
    </section>
  );
}

function Size({ form, onChange }: QuestionProps) {
  const t = useTranslations('batch.size');
  return (
    <section className={css.part}>
      <TextField
        id="piece-size"
        label={t('ask')}
        hint={t('help')}
        value={form.pieceIn}
        onChange={(event) => onChange({ pieceIn: event.target.value })}
        maxLength={40}
      />
    </section>
  );
}

const reasons = ['sold', 'discarded', 'used_up', 'delivered', 'other'] as const;

function Gone({ form, onChange }: QuestionProps) {
  const t = useTranslations('batch');
  return (
    <section className={css.part}>
      <PickGroup label={t('gone_why')} columns>
        {reasons.map((reason) => (
          <Pick
            key={reason}
            name="reason"
            value={reason}
            title={t(`gone_reason.${reason}`)}
            checked={form.reason === reason}
            onChange={() => onChange({ reason })}
          />
        ))}
      </PickGroup>
      {form.reason === 'discarded' ? (
        <TextField
          id="amount"
          label={t('amount')}
          value={form.amount}
          onChange={(event) => onChange({ amount: event.target.value })}
          maxLength={80}
        />
      ) : null}
      <TextField
        id="words"
        label={t('words')}
        value={form.text}
        onChange={(event) => onChange({ text: event.target.value })}
        maxLength={300}
      />
    </section>
  );
}
