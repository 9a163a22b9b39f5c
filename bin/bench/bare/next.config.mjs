// The smallest Next application there is, to measure against: an empty page and a route that inserts one row.
export default {
  turbopack: { root: new URL('../../..', import.meta.url).pathname },
  serverExternalPackages: ['postgres'],
};
