import { useTranslations } from 'next-intl';
import { FormSheet } from '#app/batch/FormSheet.tsx';
import form from '#app/batch/form.module.css';
import type { ScreenGiven } from '#app/client/screen.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { PowerOut } from './PowerOut.tsx';
import { poweredPlaces } from './powered.ts';

/** Power out since …, or back, for the whole kitchen at once. */
export function PowerScreen({ given, back }: { given: ScreenGiven; back: boolean }) {
  const { book, hand } = given;
  const t = useTranslations('science');
  const common = useTranslations('common');
  const places = poweredPlaces(book, back);
  return (
    <FormSheet
      title={t(back ? 'power.back_title' : 'power.title')}
      back={{ href: '/', words: common('kitchen_now') }}
      nobody={hand === null ? { next: back ? '/kitchen/power?back=1' : '/kitchen/power' } : null}
    >
      {places.length === 0 ? (
        <div className={form.form}>
          <p>{t(back ? 'power.nothing_off' : 'power.all_off')}</p>
          <KeyLink href="/kitchen/dark" wide>
            {t('dark.title')}
          </KeyLink>
        </div>
      ) : (
        <PowerOut by={hand ?? ''} zone={book.kitchen.site?.zone ?? 'UTC'} places={places} back={back} />
      )}
    </FormSheet>
  );
}
