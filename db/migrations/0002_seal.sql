CREATE TABLE "seal" (
	"site" uuid PRIMARY KEY NOT NULL,
	"key" text NOT NULL
);
