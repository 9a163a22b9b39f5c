CREATE TABLE "batch_life" (
	"site" uuid NOT NULL,
	"batch" uuid NOT NULL,
	"from_ms" bigint NOT NULL,
	"to_ms" bigint,
	CONSTRAINT "batch_life_site_batch_pk" PRIMARY KEY("site","batch")
);
--> statement-breakpoint
CREATE TABLE "device" (
	"site" uuid NOT NULL,
	"device" uuid NOT NULL,
	"name" text NOT NULL,
	"token_hash" text NOT NULL,
	"enrolled_at" text NOT NULL,
	"revoked_at" text,
	CONSTRAINT "device_site_device_pk" PRIMARY KEY("site","device")
);
--> statement-breakpoint
CREATE TABLE "head" (
	"site" uuid PRIMARY KEY NOT NULL,
	"seq" bigint NOT NULL,
	"hash" text NOT NULL
);
--> statement-breakpoint
CREATE TABLE "ledger" (
	"site" uuid NOT NULL,
	"seq" bigint NOT NULL,
	"id" uuid NOT NULL,
	"kind" text NOT NULL,
	"version" integer NOT NULL,
	"at" text NOT NULL,
	"entered_at" text NOT NULL,
	"received_at" text NOT NULL,
	"by" uuid NOT NULL,
	"known" text NOT NULL,
	"device" uuid NOT NULL,
	"body" text NOT NULL,
	"prev" text NOT NULL,
	"hash" text NOT NULL,
	"at_ms" bigint NOT NULL,
	"subject" uuid,
	"target" uuid,
	"day" text,
	CONSTRAINT "ledger_site_seq_pk" PRIMARY KEY("site","seq"),
	CONSTRAINT "ledger_site_id" UNIQUE("site","id")
);
--> statement-breakpoint
CREATE TABLE "secret" (
	"site" uuid NOT NULL,
	"person" uuid NOT NULL,
	"hash" text,
	"set_at" text,
	"tries" integer DEFAULT 0 NOT NULL,
	"shut_until_ms" bigint,
	"must_set" boolean DEFAULT false NOT NULL,
	CONSTRAINT "secret_site_person_pk" PRIMARY KEY("site","person")
);
--> statement-breakpoint
CREATE TABLE "sign_in" (
	"site" uuid NOT NULL,
	"id" uuid NOT NULL,
	"device" uuid NOT NULL,
	"person" uuid NOT NULL,
	"how" text NOT NULL,
	"since_ms" bigint NOT NULL,
	"last_seen_ms" bigint NOT NULL,
	"ended_ms" bigint,
	CONSTRAINT "sign_in_site_id_pk" PRIMARY KEY("site","id")
);
--> statement-breakpoint
CREATE TABLE "signed_text" (
	"site" uuid NOT NULL,
	"hash" text NOT NULL,
	"text" text NOT NULL,
	CONSTRAINT "signed_text_site_hash_pk" PRIMARY KEY("site","hash")
);
--> statement-breakpoint
CREATE INDEX "batch_life_site_to" ON "batch_life" USING btree ("site","to_ms","from_ms","batch");--> statement-breakpoint
CREATE INDEX "ledger_site_at" ON "ledger" USING btree ("site","at_ms","seq");--> statement-breakpoint
CREATE INDEX "ledger_site_kind" ON "ledger" USING btree ("site","kind","at_ms","seq");--> statement-breakpoint
CREATE INDEX "ledger_site_subject" ON "ledger" USING btree ("site","subject","at_ms","seq");--> statement-breakpoint
CREATE INDEX "ledger_site_target" ON "ledger" USING btree ("site","target");--> statement-breakpoint
CREATE INDEX "ledger_site_day" ON "ledger" USING btree ("site","day");--> statement-breakpoint
CREATE INDEX "sign_in_site_device" ON "sign_in" USING btree ("site","device","person","ended_ms");