-- The ledger and the signed texts take new rows and nothing else, whoever asks: the application, the owner of the
-- tables, a restore under `session_replication_role = replica` (hence ALWAYS).
CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
	RAISE EXCEPTION '% on % is refused: the book is append-only; a correction is a new entry', TG_OP, TG_TABLE_NAME
		USING ERRCODE = 'insufficient_privilege';
END
$$;
--> statement-breakpoint
CREATE TRIGGER "ledger_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "ledger"
	FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
ALTER TABLE "ledger" ENABLE ALWAYS TRIGGER "ledger_append_only";
--> statement-breakpoint
CREATE TRIGGER "signed_text_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "signed_text"
	FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
ALTER TABLE "signed_text" ENABLE ALWAYS TRIGGER "signed_text_append_only";
--> statement-breakpoint
REVOKE ALL ON "ledger", "signed_text", "head", "batch_life", "secret", "device", "sign_in" FROM PUBLIC;
