import { Font } from '@react-pdf/renderer';

/**
 * The two families of the printed sheet (docs/look.md, section 9): static files, each registered under its family
 * with its own weight, because the names inside the files differ. The extended subset stands in for letters that
 * the Latin one lacks ("Łukasz").
 */
const faces = [
  { family: 'Archivo', weight: 400, style: 'normal' },
  { family: 'Archivo', weight: 400, style: 'italic' },
  { family: 'Archivo', weight: 600, style: 'normal' },
  { family: 'Archivo', weight: 700, style: 'normal' },
  { family: 'Besley', weight: 500, style: 'normal' },
  { family: 'Besley', weight: 600, style: 'normal' },
  { family: 'Besley', weight: 600, style: 'italic' },
  { family: 'Besley', weight: 700, style: 'normal' },
] as const;

/** Fonts are registered in the renderer's own store, once a process. */
let registered: string | null = null;

/** @param modules folder in which the two @fontsource packages are installed (…/node_modules) */
export function registerFonts(modules: string): void {
  if (registered === modules) return;
  registered = modules;
  for (const subset of ['latin', 'latin-ext'] as const) {
    for (const family of ['Archivo', 'Besley'] as const) {
      Font.register({
        family: subset === 'latin' ? family : `${family} more`,
        fonts: faces
          .filter((face) => face.family === family)
          .map((face) => ({
            src: `${modules}/@fontsource/${family.toLowerCase()}/files/${family.toLowerCase()}-${subset}-${face.weight}-${face.style}.woff`,
            fontWeight: face.weight,
            fontStyle: face.style,
          })),
      });
    }
  }
  Font.registerHyphenationCallback((word) => [word]); // nothing is broken inside a word or a figure
}

export const words = ['Archivo', 'Archivo more'];
export const names = ['Besley', 'Besley more'];
