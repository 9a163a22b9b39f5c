DROP INDEX "ledger_site_subject";--> statement-breakpoint
CREATE INDEX "ledger_site_subject" ON "ledger" USING btree ("site","subject","kind","at_ms","seq");