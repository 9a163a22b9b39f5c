import postgres from 'postgres';

const options = JSON.parse(process.env.BENCH_DATABASE ?? '{}');
const sql = postgres(options);

export async function POST(request) {
  const { id, body } = await request.json();
  await sql`insert into bench_row (id, body) values (${id}, ${body})`;
  return Response.json({ id });
}
