-- The one change that the ledger takes, whoever asks: at the end of its retention a body gives way to its own SHA-256,
-- of entries that an entry of the kind `erasure` names and that are two years old (a day less, for clocks that change).
-- All else stays refused, and the triggers stay on while it is done. The application has no right to it at all.
CREATE FUNCTION "refuse_but_erasure"() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
	IF EXISTS (
		SELECT FROM was LEFT JOIN now ON now.site = was.site AND now.seq = was.seq
		WHERE now.seq IS NULL
			OR was.body NOT LIKE '{%'
			OR now.body <> 'sha256:' || encode(sha256(convert_to(was.body, 'UTF8')), 'hex')
			OR now.subject IS NOT NULL OR now.target IS NOT NULL OR now.day IS NOT NULL
			OR (was.id, was.kind, was.version, was.at, was.entered_at, was.received_at, was.by, was.known, was.device, was.prev, was.hash, was.at_ms)
				IS DISTINCT FROM
				(now.id, now.kind, now.version, now.at, now.entered_at, now.received_at, now.by, now.known, now.device, now.prev, now.hash, now.at_ms)
			OR was.received_at::timestamptz > clock_timestamp() - interval '2 years' + interval '1 day'
	) OR EXISTS (
		WITH named AS (
			SELECT e.site, e.seq, (r ->> 0)::bigint AS first, (r ->> 1)::bigint AS last
			FROM ledger e, jsonb_array_elements(e.body::jsonb -> 'ranges') r
			WHERE e.site IN (SELECT site FROM was) AND e.kind = 'erasure' AND e.body LIKE '{%'
		)
		SELECT FROM was WHERE NOT EXISTS (
			SELECT FROM named WHERE named.site = was.site AND named.seq > was.seq AND was.seq BETWEEN named.first AND named.last
		)
	) THEN
		RAISE EXCEPTION '% on % is refused: the book is append-only; a correction is a new entry', TG_OP, TG_TABLE_NAME
			USING ERRCODE = 'insufficient_privilege';
	END IF;
	RETURN NULL;
END
$$;
--> statement-breakpoint
CREATE FUNCTION "refuse_but_erased_text"() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
	IF EXISTS (
		WITH named AS (
			SELECT e.site, s ->> 'hash' AS hash
			FROM ledger e, jsonb_array_elements(e.body::jsonb -> 'sheets') s
			WHERE e.site IN (SELECT site FROM was) AND e.kind = 'erasure' AND e.body LIKE '{%'
		)
		SELECT FROM was WHERE NOT EXISTS (
			SELECT FROM named WHERE named.site = was.site AND named.hash = was.hash
		)
	) THEN
		RAISE EXCEPTION '% on % is refused: the book is append-only; a correction is a new entry', TG_OP, TG_TABLE_NAME
			USING ERRCODE = 'insufficient_privilege';
	END IF;
	RETURN NULL;
END
$$;
--> statement-breakpoint
DROP TRIGGER "ledger_append_only" ON "ledger";
--> statement-breakpoint
CREATE TRIGGER "ledger_append_only" BEFORE DELETE OR TRUNCATE ON "ledger"
	FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
ALTER TABLE "ledger" ENABLE ALWAYS TRIGGER "ledger_append_only";
--> statement-breakpoint
CREATE TRIGGER "ledger_erase_only" AFTER UPDATE ON "ledger" REFERENCING OLD TABLE AS was NEW TABLE AS now
	FOR EACH STATEMENT EXECUTE FUNCTION "refuse_but_erasure"();
--> statement-breakpoint
ALTER TABLE "ledger" ENABLE ALWAYS TRIGGER "ledger_erase_only";
--> statement-breakpoint
DROP TRIGGER "signed_text_append_only" ON "signed_text";
--> statement-breakpoint
CREATE TRIGGER "signed_text_append_only" BEFORE UPDATE OR TRUNCATE ON "signed_text"
	FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
ALTER TABLE "signed_text" ENABLE ALWAYS TRIGGER "signed_text_append_only";
--> statement-breakpoint
CREATE TRIGGER "signed_text_erase_only" AFTER DELETE ON "signed_text" REFERENCING OLD TABLE AS was
	FOR EACH STATEMENT EXECUTE FUNCTION "refuse_but_erased_text"();
--> statement-breakpoint
ALTER TABLE "signed_text" ENABLE ALWAYS TRIGGER "signed_text_erase_only";
