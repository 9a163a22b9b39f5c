import { StyleSheet } from '@react-pdf/renderer';
import { names, words } from './fonts.ts';
import { margin } from './paper.ts';

/** One black, hairlines 50 % grey (docs/look.md, section 9). Text 9 pt and more. */
export const hair = '#808080';

/** Besley stands tall: with less than its own height, its letters fall into the next line. */
const tall = 1.36;

export const style = StyleSheet.create({
  page: {
    paddingTop: margin.top,
    paddingBottom: margin.bottom,
    paddingLeft: margin.left,
    paddingRight: margin.right,
    fontFamily: words,
    fontSize: 9.5,
    color: '#000',
  },
  /** Of everything but the page's number: the renderer drops a text that it fills in last when its
   * lines have a height. Lines are high by the size of the letters here, so the size stands here too. */
  body: { fontSize: 9.5, lineHeight: 1.2 },
  head: {
    fontSize: 9.5,
    lineHeight: 1.25,
    position: 'absolute',
    top: 28,
    left: margin.left,
    right: margin.right,
    flexDirection: 'row',
    justifyContent: 'space-between',
    alignItems: 'flex-end',
    borderBottomWidth: 2,
    borderBottomColor: '#000',
    paddingBottom: 3,
  },
  foot: {
    position: 'absolute',
    bottom: 20, // four lines of foot end at the margin
    left: margin.left,
    right: margin.right,
    borderTopWidth: 0.5,
    borderTopColor: '#000',
    paddingTop: 3,
    fontSize: 9,
    lineHeight: 1.2,
  },
  number: {
    position: 'absolute',
    bottom: 43,
    right: margin.right,
    width: 80,
    textAlign: 'right',
    fontSize: 9,
    fontWeight: 700,
  },
  row: { flexDirection: 'row' },
  between: { flexDirection: 'row', justifyContent: 'space-between' },
  title: { fontFamily: names, fontWeight: 700, fontSize: 15, lineHeight: tall, paddingBottom: 2 },
  /** The title of a part that begins in the middle of a page. */
  part: {
    fontFamily: names,
    fontWeight: 700,
    fontSize: 15,
    lineHeight: tall,
    paddingBottom: 3,
    marginTop: 10,
    borderBottomWidth: 2,
    borderBottomColor: '#000',
  },
  section: {
    fontFamily: names,
    fontWeight: 600,
    fontSize: 13,
    lineHeight: tall,
    paddingBottom: 2,
    marginTop: 6,
    marginBottom: 1,
  },
  under: { fontFamily: names, fontWeight: 600, fontSize: 11.5, lineHeight: tall, paddingBottom: 2 },
  /** Words in the line of a name. */
  besideName: { fontFamily: words, fontWeight: 400, fontSize: 9.5 },
  name: { fontFamily: names, fontWeight: 600, fontSize: 9.5, lineHeight: tall, paddingBottom: 2 },
  strong: { fontWeight: 700 },
  cited: { fontWeight: 600 },
  tool: { fontStyle: 'italic' },
  ruled: { borderBottomWidth: 0.5, borderBottomColor: hair },
  ruledAbove: { borderTopWidth: 1, borderTopColor: '#000', paddingTop: 3, marginTop: 6 },
  headRow: {
    flexDirection: 'row',
    borderBottomWidth: 1,
    borderBottomColor: '#000',
    paddingBottom: 1,
    fontWeight: 700,
    fontSize: 9,
  },
});
