CREATE TABLE "device_clock" (
	"site" uuid NOT NULL,
	"device" uuid NOT NULL,
	"at_ms" bigint NOT NULL,
	"off_ms" bigint NOT NULL,
	CONSTRAINT "device_clock_site_device_at_ms_pk" PRIMARY KEY("site","device","at_ms")
);
