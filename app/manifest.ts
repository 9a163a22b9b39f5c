import type { MetadataRoute } from 'next';

/** What a phone needs to put the book on its home screen. The icons are app/icon1.png and app/icon2.png. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Holdproof',
    short_name: 'Holdproof',
    description: 'The record book of a kitchen that holds smoked meat hot overnight.',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    background_color: '#ffffff',
    theme_color: '#ffffff',
    icons: [
      { src: '/icon1.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
      { src: '/icon2.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
      { src: '/icon2.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  };
}
