#!/bin/sh
# Run once by InfluxDB's image after its setup: lets InfluxQL, which speaks of databases, find the bucket.
set -e
influx v1 dbrp create --db "$DOCKER_INFLUXDB_INIT_BUCKET" --rp autogen --default \
  --bucket-id "$DOCKER_INFLUXDB_INIT_BUCKET_ID" --org "$DOCKER_INFLUXDB_INIT_ORG"
